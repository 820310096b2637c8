/** "away": the only voices send what they say to a server, so none of them is used. */
export type Spoken = "said" | "none" | "away";

function synthesis(): SpeechSynthesis | null {
  return (globalThis as { speechSynthesis?: SpeechSynthesis }).speechSynthesis ?? null;
}

/** Browsers fetch their list of voices only after the first question, ms. */
const voicesWait = 1500;

async function voicesOf(speech: SpeechSynthesis): Promise<readonly SpeechSynthesisVoice[]> {
  const now = speech.getVoices();
  if (now.length > 0) return now;
  await new Promise<void>((done) => {
    speech.addEventListener("voiceschanged", () => done(), { once: true });
    setTimeout(done, voicesWait);
  });
  return speech.getVoices();
}

/** An English voice that speaks on this phone itself, the phone's usual one first. */
export function voiceOnPhone(voices: readonly SpeechSynthesisVoice[]): SpeechSynthesisVoice | null {
  const here = voices.filter(({ localService, lang }) => localService && /^en\b/i.test(lang));
  return here.find((voice) => voice.default) ?? here[0] ?? null;
}

/** Says a text in place of whatever is still being said. Nothing leaves the phone. */
export async function say(text: string): Promise<Spoken> {
  const speech = synthesis();
  if (!speech) return "none";
  const voices = await voicesOf(speech);
  const voice = voiceOnPhone(voices);
  if (!voice) return voices.length > 0 ? "away" : "none";
  const utterance = new SpeechSynthesisUtterance(text);
  utterance.voice = voice;
  utterance.lang = voice.lang;
  speech.cancel();
  speech.speak(utterance);
  return "said";
}

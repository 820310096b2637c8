import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { spokenEntry } from "../../../src/screens/voice/spokenEntry.ts";
import { say, voiceOnPhone } from "../../../src/screens/voice/voice.ts";

describe("a number as it is said", () => {
  it.each([
    ["58.7", "length", "mm", "58.7 millimeters"],
    ["58,7", "length", "mm", "58.7 millimeters"],
    ["1", "length", "mm", "1 millimeter"],
    ["5.87 cm", "length", "mm", "5.87 centimeters"],
    ["2 5/16", "length", "in", "two and five sixteenths inches"],
    ["2-5/16", "length", "in", "two and five sixteenths inches"],
    ["2 5/16 in", "length", "mm", "two and five sixteenths inches"],
    ["21 11/32", "length", "in", "twenty-one and eleven thirty-seconds inches"],
    ["1/2", "length", "in", "one half of an inch"],
    ["1 1/4", "length", "in", "one and one quarter inches"],
    ["3/7", "length", "in", "3 over 7 of an inch"],
    ["1", "length", "in", "1 inch"],
    ["-8.5", "angle", "deg", "minus 8.5 degrees"],
    ["512", "mass", "kg", "512 kilograms"],
    [".5", "length", "in", "0.5 inches"],
  ] as const)("“%s” (%s, %s)", (text, kind, unit, said) => {
    expect(spokenEntry(text, kind, unit)).toBe(said);
  });

  it("is nothing where nothing can be read", () => {
    for (const text of ["", "a thumb", "1.2.3", "2 18/16", "12 furlongs"]) {
      expect(spokenEntry(text, "length", "in")).toBeNull();
    }
  });

  it("never says what is not a number", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), (text) => {
        expect(spokenEntry(text, "length", "in") ?? "").not.toMatch(/NaN|Infinity|undefined/);
      }),
    );
  });
});

function voice(name: string, lang: string, localService: boolean, isDefault = false) {
  return { name, lang, localService, default: isDefault, voiceURI: name } as SpeechSynthesisVoice;
}

function speechWith(voices: readonly SpeechSynthesisVoice[]) {
  const spoken: { text: string; voice: SpeechSynthesisVoice | null }[] = [];
  vi.stubGlobal("speechSynthesis", {
    getVoices: () => voices,
    addEventListener: (_: string, heard: () => void) => heard(),
    cancel: vi.fn(),
    speak: (utterance: SpeechSynthesisUtterance) =>
      spoken.push({ text: utterance.text, voice: utterance.voice }),
  });
  vi.stubGlobal(
    "SpeechSynthesisUtterance",
    class {
      voice: SpeechSynthesisVoice | null = null;
      lang = "";
      constructor(readonly text: string) {}
    },
  );
  return spoken;
}

describe("the voice", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("is an English one of this phone, the usual one first", () => {
    const away = voice("away", "en-GB", false, true);
    const here = voice("here", "en-AU", true);
    const usual = voice("usual", "en-US", true, true);
    expect(voiceOnPhone([away, voice("German", "de-DE", true, true), here, usual])).toBe(usual);
    expect(voiceOnPhone([away, here])).toBe(here);
    expect(voiceOnPhone([away])).toBeNull();
  });

  it("says the words", async () => {
    const spoken = speechWith([voice("away", "en-GB", false), voice("here", "en-GB", true)]);
    expect(await say("58.7 millimeters")).toBe("said");
    expect(spoken).toEqual([
      { text: "58.7 millimeters", voice: expect.objectContaining({ name: "here" }) },
    ]);
  });

  it("stays silent where the only voices are elsewhere, and says which trouble it is", async () => {
    const spoken = speechWith([voice("away", "en-GB", false)]);
    expect(await say("7 degrees")).toBe("away");
    expect(spoken).toEqual([]);
    speechWith([]);
    expect(await say("7 degrees")).toBe("none");
    vi.unstubAllGlobals();
    vi.stubGlobal("speechSynthesis", undefined);
    expect(await say("7 degrees")).toBe("none");
  });
});

import { useState } from "preact/hooks";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";
import { type Spoken, say } from "../voice/voice.ts";

const trouble: { readonly [Outcome in Spoken]: string } = {
  said: "",
  none: "This browser has no English voice. In the phone's settings, look for text to speech and add one that works offline.",
  away: "The voices of this browser speak through a server, and Stopfit sends nothing anywhere. In the phone's settings, look for text to speech and add an English voice that works offline.",
};

/** A number just entered is said aloud, by a voice of this phone or not at all. */
export function VoiceChoice({ preferences }: { preferences: Preferences }) {
  const [spoken, setSpoken] = useState<Spoken>("said");
  const hear = async () => setSpoken(await say("58.7 millimeters"));
  return (
    <>
      <CheckLine
        checked={preferences.speak}
        onChange={(speak) => {
          changePreferences({ speak });
          if (speak) hear();
        }}
        hint="With both hands on the tape: what was entered is said aloud. It is spoken on this phone."
      >
        Read numbers aloud
      </CheckLine>
      {preferences.speak && (
        <div class="row">
          <Button onClick={hear}>Hear an example</Button>
        </div>
      )}
      {preferences.speak && trouble[spoken] && (
        <Notice tone="care" live>
          <p>{trouble[spoken]}</p>
        </Notice>
      )}
    </>
  );
}

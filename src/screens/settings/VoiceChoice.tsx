import { useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/settings.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";
import { type Spoken, say } from "../voice/voice.ts";

const trouble: { readonly [Outcome in Spoken]: string } = {
  said: "",
  none: messages.thisBrowserHasNo,
  away: messages.voicesOfThisBrowser,
};

/** A number just entered is said aloud, by a voice of this phone or not at all. */
export function VoiceChoice({ preferences }: { preferences: Preferences }) {
  const [spoken, setSpoken] = useState<Spoken>("said");
  const hear = async () => setSpoken(await say(messages.n587Millimeters));
  return (
    <>
      <CheckLine
        checked={preferences.speak}
        onChange={(speak) => {
          changePreferences({ speak });
          if (speak) hear();
        }}
        hint={messages.withBothHandsOn}
      >
        {messages.readNumbersAloud}
      </CheckLine>
      {preferences.speak && (
        <div class="row">
          <Button onClick={hear}>{messages.hearExample}</Button>
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

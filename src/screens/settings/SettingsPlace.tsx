import { checksHref, goTo } from "../addresses.ts";
import type { TextSize, Theme } from "../appearance.ts";
import { Button } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { CheckLine, Choices, type Option, Segmented } from "../parts/Choices.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";
import { settingsName } from "./settingsRoute.ts";
import { Units } from "./Units.tsx";
import { VoiceChoice } from "./VoiceChoice.tsx";

export interface SettingsPlaceProps {
  readonly preferences: Preferences;
}

const themeOptions: readonly Option<Theme>[] = [
  { value: "phone", name: "Match phone", hint: "Light by day, dark where the phone is dark." },
  { value: "light", name: "Light" },
  { value: "dark", name: "Dark", hint: "For a dim garage." },
  {
    value: "sun",
    name: "Sunlight",
    hint: "Black on white, strong lines: for reading outdoors.",
  },
];

const textOptions: readonly Option<TextSize>[] = [
  { value: "usual", name: "Usual" },
  { value: "large", name: "Large" },
  { value: "largest", name: "Largest" },
];

function goBack() {
  if (history.length > 1) history.back();
  else goTo(checksHref);
}

/** Units, looks, keys, screen and voice: kept in this browser, for every check. */
export function SettingsPlace({ preferences }: SettingsPlaceProps) {
  const heading = useHeadingFocus("settings");
  return (
    <Screen
      top={
        <>
          <Button look="quiet" icon="back" label="Back" onClick={goBack} />
          <span class="screen-name">{settingsName}</span>
        </>
      }
      actions={
        <Button look="main" onClick={goBack}>
          Done
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {settingsName}
      </h1>
      <p class="soft">Changes apply immediately to every check.</p>
      <Card heading="Units">
        <Units preferences={preferences} />
        <p class="small soft">
          Numbers already typed keep their unit. A check can have its own units, under Vehicle.
        </p>
      </Card>
      <Card heading="Theme">
        <Choices
          legend="Theme"
          legendUnseen
          value={preferences.theme}
          onChange={(theme) => changePreferences({ theme })}
          options={themeOptions}
        />
      </Card>
      <Card heading="Text size">
        <Segmented
          legend="Text size"
          legendUnseen
          value={preferences.text}
          onChange={(text) => changePreferences({ text })}
          options={textOptions}
        />
      </Card>
      <Card heading="Number keypad">
        <Choices
          legend="Number keypad"
          legendUnseen
          value={preferences.keys}
          onChange={(keys) => changePreferences({ keys })}
          options={[
            {
              value: "own",
              name: "Stopfit's keypad",
              hint: "Large, with fractions of an inch, and the drawing stays in view.",
            },
            {
              value: "phone",
              name: "The phone's keyboard",
              hint: "Any keyboard or dictation that is set up on the phone.",
            },
          ]}
        />
      </Card>
      <Card heading="While measuring">
        <CheckLine
          checked={preferences.awake}
          onChange={(awake) => changePreferences({ awake })}
          hint="The screen does not go dark while a reading is open."
        >
          Keep the screen on
        </CheckLine>
        <CheckLine
          checked={preferences.explain}
          onChange={(explain) => changePreferences({ explain })}
          hint="Otherwise how to measure is folded once you have made three checks."
        >
          Explain every step
        </CheckLine>
        <CheckLine
          checked={preferences.shared}
          onChange={(shared) => changePreferences({ shared })}
          hint="Each new check asks who measures. A name stays for a day."
        >
          Several people measure with this phone
        </CheckLine>
        <VoiceChoice preferences={preferences} />
      </Card>
    </Screen>
  );
}

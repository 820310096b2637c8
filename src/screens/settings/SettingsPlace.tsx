import * as messages from "../../words/compiled/screens/settings.ts";
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
  { value: "phone", name: messages.matchPhone, hint: messages.lightByDayDark },
  { value: "light", name: messages.light },
  { value: "dark", name: messages.dark, hint: messages.forDimGarage },
  {
    value: "sun",
    name: messages.sunlight,
    hint: messages.blackOnWhiteStrong,
  },
];

const textOptions: readonly Option<TextSize>[] = [
  { value: "usual", name: messages.usual },
  { value: "large", name: messages.large },
  { value: "largest", name: messages.largest },
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
          <Button look="quiet" icon="back" label={messages.back} onClick={goBack} />
          <span class="screen-name">{settingsName}</span>
        </>
      }
      actions={
        <Button look="main" onClick={goBack}>
          {messages.done}
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {settingsName}
      </h1>
      <p class="soft">{messages.changesApplyImmediatelyTo}</p>
      <Card heading={messages.units}>
        <Units preferences={preferences} />
        <p class="small soft">{messages.numbersAlreadyTypedKeep}</p>
      </Card>
      <Card heading={messages.theme}>
        <Choices
          legend={messages.theme}
          legendUnseen
          value={preferences.theme}
          onChange={(theme) => changePreferences({ theme })}
          options={themeOptions}
        />
      </Card>
      <Card heading={messages.textSize}>
        <Segmented
          legend={messages.textSize}
          legendUnseen
          value={preferences.text}
          onChange={(text) => changePreferences({ text })}
          options={textOptions}
        />
      </Card>
      <Card heading={messages.numberKeypad}>
        <Choices
          legend={messages.numberKeypad}
          legendUnseen
          value={preferences.keys}
          onChange={(keys) => changePreferences({ keys })}
          options={[
            {
              value: "own",
              name: messages.stopfitsKeypad,
              hint: messages.largeWithFractionsOf,
            },
            {
              value: "phone",
              name: messages.phonesKeyboard,
              hint: messages.anyKeyboardOrDictation,
            },
          ]}
        />
      </Card>
      <Card heading={messages.whileMeasuring}>
        <CheckLine
          checked={preferences.awake}
          onChange={(awake) => changePreferences({ awake })}
          hint={messages.screenDoesNotGo}
        >
          {messages.keepScreenOn}
        </CheckLine>
        <CheckLine
          checked={preferences.explain}
          onChange={(explain) => changePreferences({ explain })}
          hint={messages.otherwiseHowToMeasure}
        >
          {messages.explainEveryStep}
        </CheckLine>
        <CheckLine
          checked={preferences.shared}
          onChange={(shared) => changePreferences({ shared })}
          hint={messages.eachNewCheckAsks}
        >
          {messages.severalPeopleMeasureWith}
        </CheckLine>
        <VoiceChoice preferences={preferences} />
      </Card>
    </Screen>
  );
}

import * as messages from "../../words/compiled/screens/settings.ts";
import { Segmented } from "../parts/Choices.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";

/** The units one reads and types in; a reading can still be typed in the other ones. */
export function Units({ preferences }: { preferences: Preferences }) {
  return (
    <Segmented
      legend={messages.units}
      legendUnseen
      value={preferences.length}
      onChange={(length) => changePreferences({ length })}
      options={[
        { value: "in", name: messages.usInLbMph },
        { value: "mm", name: messages.metricMmKgKm },
      ]}
    />
  );
}

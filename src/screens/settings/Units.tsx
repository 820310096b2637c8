import { Segmented } from "../parts/Choices.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";

/** The units one reads and types in; a reading can still be typed in the other ones. */
export function Units({ preferences }: { preferences: Preferences }) {
  return (
    <Segmented
      legend="Units"
      legendUnseen
      value={preferences.length}
      onChange={(length) => changePreferences({ length })}
      options={[
        { value: "in", name: "US: in, lb, mph" },
        { value: "mm", name: "Metric: mm, kg, km/h" },
      ]}
    />
  );
}

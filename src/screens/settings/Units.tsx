import { Segmented } from "../parts/Choices.tsx";
import { changePreferences, type Preferences } from "../preferences.ts";

/** The units one reads and types in; a reading can still be typed in the other one. */
export function Units({ preferences }: { preferences: Preferences }) {
  return (
    <>
      <Segmented
        legend="Lengths"
        value={preferences.length}
        onChange={(length) => changePreferences({ length })}
        options={[
          { value: "mm", name: "mm" },
          { value: "in", name: "inches" },
        ]}
      />
      <Segmented
        legend="Weights"
        value={preferences.mass}
        onChange={(mass) => changePreferences({ mass })}
        options={[
          { value: "kg", name: "kg" },
          { value: "lb", name: "lb" },
        ]}
      />
    </>
  );
}

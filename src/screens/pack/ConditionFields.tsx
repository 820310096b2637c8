import type { TestConditions } from "../../records/pack/pack.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { TextField } from "../parts/Field.tsx";

export const conditionNames: readonly (readonly [keyof TestConditions, string])[] = [
  ["temperature", "Temperature"],
  ["preload", "Preload"],
  ["conditioning", "Cycles before the test"],
  ["rest", "Rest before the test"],
  ["specimen", "Specimen"],
];

/** Under what a test was made: kept beside it as typed; no figure is changed for it. */
export function ConditionFields({
  conditions,
  onChange,
}: {
  conditions: TestConditions;
  onChange: (conditions: TestConditions) => void;
}) {
  return (
    <Disclosure summary="Conditions of the test">
      {conditionNames.map(([name, label]) => (
        <TextField
          key={name}
          label={label}
          value={conditions[name] ?? ""}
          maxLength={200}
          onInput={(text) => {
            const { [name]: _, ...others } = conditions;
            onChange(text.trim() === "" ? others : { ...others, [name]: text });
          }}
        />
      ))}
      <p class="small soft">Saved beside the test. No figure is changed for them.</p>
    </Disclosure>
  );
}

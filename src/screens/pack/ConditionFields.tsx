import type { TestConditions } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { TextField } from "../parts/Field.tsx";

export const conditionNames: readonly (readonly [keyof TestConditions, string])[] = [
  ["temperature", messages.temperature],
  ["preload", messages.preload],
  ["conditioning", messages.cyclesBeforeTest],
  ["rest", messages.restBeforeTest],
  ["specimen", messages.specimen],
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
    <Disclosure summary={messages.conditionsOfTest}>
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
      <p class="small soft">{messages.savedBesideTestNo}</p>
    </Disclosure>
  );
}

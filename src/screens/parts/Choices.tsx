import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export interface Option<Value extends string> {
  readonly value: Value;
  readonly name: ComponentChildren;
  /** Read out instead of the name, where the name is an abbreviation. */
  readonly spoken?: string;
  readonly hint?: ComponentChildren;
  readonly picture?: ComponentChildren;
}

interface ChoiceProps<Value extends string> {
  readonly legend: ComponentChildren;
  readonly legendUnseen?: boolean;
  readonly options: readonly Option<Value>[];
  readonly value: Value | null;
  readonly onChange: (value: Value) => void;
}

/** Two to five short alternatives in one row. */
export function Segmented<Value extends string>({
  legend,
  legendUnseen = false,
  options,
  value,
  onChange,
}: ChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="field">
      <legend class={legendUnseen ? "unseen" : "field-label"}>{legend}</legend>
      <div class="segmented">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={value === option.value}
              aria-label={option.spoken}
              onChange={() => onChange(option.value)}
            />
            <span>{option.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** Alternatives that need a sentence or a picture each. */
export function Choices<Value extends string>({
  legend,
  legendUnseen = false,
  options,
  value,
  onChange,
}: ChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="field">
      <legend class={legendUnseen ? "unseen" : "field-label"}>{legend}</legend>
      <div class="choices">
        {options.map((option) => (
          <label
            key={option.value}
            class={option.picture ? "choice choice-with-picture" : "choice"}
          >
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={value === option.value}
              onChange={() => onChange(option.value)}
            />
            <span>
              <span class="choice-name">{option.name}</span>
              {option.hint && <span class="choice-hint">{option.hint}</span>}
            </span>
            {option.picture}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** One line to tick off. */
export function CheckLine({
  checked,
  onChange,
  hint,
  picture,
  children,
}: {
  checked: boolean;
  onChange: (checked: boolean) => void;
  hint?: ComponentChildren;
  picture?: ComponentChildren;
  children: ComponentChildren;
}) {
  return (
    <label class={picture ? "check-line choice-with-picture" : "check-line"}>
      <input
        type="checkbox"
        checked={checked}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <span>
        <span class={hint ? "choice-name" : ""}>{children}</span>
        {hint && <span class="choice-hint">{hint}</span>}
      </span>
      {picture}
    </label>
  );
}

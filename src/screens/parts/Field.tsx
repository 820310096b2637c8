import type { ComponentChildren, Ref } from "preact";
import { useId } from "preact/hooks";
import type { Tone } from "./Notice.tsx";
import { placeholderClass } from "./placeholder.ts";

export interface TextFieldProps {
  readonly label: ComponentChildren;
  /** The label is read out but not shown: where the screen's heading already says it. */
  readonly labelUnseen?: boolean;
  readonly hint?: ComponentChildren;
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly onEnter?: () => void;
  readonly onBlur?: () => void;
  /** Stands before what is typed: "±". */
  readonly lead?: string;
  readonly unit?: string;
  readonly unitSpoken?: string;
  /** "text" for inches, where a space and a slash must be typeable; "none" where own keys are shown. */
  readonly keys?: "decimal" | "numeric" | "text" | "none";
  /** What own keys for a number need to know of the input. */
  readonly number?: {
    readonly onFocus: () => void;
    readonly onBlur: (event: FocusEvent) => void;
    readonly onClick: () => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
  readonly big?: boolean;
  /** Entered as its screen opens (useHeadingFocus). */
  readonly first?: boolean;
  readonly tone?: Tone;
  readonly message?: ComponentChildren;
  readonly placeholder?: string;
  readonly inputRef?: Ref<HTMLInputElement>;
  readonly maxLength?: number;
  /** For names and sentences; numbers go without. */
  readonly capitals?: boolean;
}

/** A big number stays in a big box; a long one is written smaller, so that all of it shows. */
function fieldClass(big: boolean, value: string): string {
  if (!big) return "field";
  return value.length > 5 ? "field field-big field-long" : "field field-big";
}

export function TextField({
  label,
  labelUnseen = false,
  hint,
  value,
  onInput,
  onEnter,
  onBlur,
  lead,
  unit,
  unitSpoken,
  keys = "text",
  number,
  big = false,
  first = false,
  tone,
  message,
  placeholder,
  inputRef,
  maxLength,
  capitals = false,
}: TextFieldProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, unit && `${id}-unit`, message && `${id}-message`]
    .filter(Boolean)
    .join(" ");
  return (
    <div class={fieldClass(big, value)}>
      <label for={id} class={labelUnseen ? "unseen" : "field-label"}>
        {label}
      </label>
      {hint && (
        <span id={`${id}-hint`} class="field-hint">
          {hint}
        </span>
      )}
      <span class="field-box" data-tone={tone}>
        {lead && (
          <span class="field-lead" aria-hidden="true">
            {lead}
          </span>
        )}
        <input
          id={id}
          ref={inputRef ?? null}
          type="text"
          inputMode={keys}
          value={value}
          class={placeholder && placeholderClass(placeholder)}
          placeholder={placeholder}
          maxLength={maxLength}
          autocomplete="off"
          autocapitalize={capitals ? "sentences" : "off"}
          spellcheck={capitals}
          enterKeyHint={onEnter ? "next" : "done"}
          aria-describedby={described || undefined}
          aria-invalid={tone === "no" ? true : undefined}
          onInput={(event) => onInput(event.currentTarget.value)}
          data-number={number ? "" : undefined}
          data-first={first ? "" : undefined}
          onFocus={number?.onFocus}
          onClick={number?.onClick}
          onBlur={(event) => {
            onBlur?.();
            number?.onBlur(event);
          }}
          onKeyDown={(event) => {
            number?.onKeyDown(event);
            if (event.key === "Enter" && onEnter) {
              event.preventDefault();
              onEnter();
            }
          }}
        />
        {unit && (
          <span id={`${id}-unit`} class="field-unit">
            {unitSpoken ? (
              <>
                <span aria-hidden="true">{unit}</span>
                <span class="unseen">{unitSpoken}</span>
              </>
            ) : (
              unit
            )}
          </span>
        )}
      </span>
      {message && (
        <span id={`${id}-message`} class={`small tone-${tone ?? "info"}`} role="status">
          {message}
        </span>
      )}
    </div>
  );
}

export function SelectField({
  label,
  hint,
  value,
  options,
  lettersInBox = 34,
  onChange,
}: {
  label: ComponentChildren;
  hint?: ComponentChildren;
  value: string;
  options: readonly { value: string; text: string }[];
  /** As many as surely show on a narrow phone: a longer choice stands under the box once more, whole. */
  lettersInBox?: number;
  onChange: (value: string) => void;
}) {
  const id = useId();
  const chosen = options.find((option) => option.value === value)?.text ?? "";
  return (
    <div class="field">
      <label for={id} class="field-label">
        {label}
      </label>
      {hint && (
        <span id={`${id}-hint`} class="field-hint">
          {hint}
        </span>
      )}
      <span class="field-box">
        <select
          id={id}
          value={value}
          aria-describedby={hint ? `${id}-hint` : undefined}
          onChange={(event) => onChange(event.currentTarget.value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.text}
            </option>
          ))}
        </select>
      </span>
      {chosen.length > lettersInBox && (
        <span class="field-hint" aria-hidden="true">
          {chosen}
        </span>
      )}
    </div>
  );
}

import type { Ref } from "preact";
import { useRef } from "preact/hooks";
import { TextField, type TextFieldProps } from "../../parts/Field.tsx";
import type { PadLayout } from "./Keypad.tsx";
import { useKeypad } from "./useKeypad.tsx";
import "./keypad.css";

export interface NumberFieldProps extends Omit<TextFieldProps, "keys" | "label">, PadLayout {
  readonly label: string;
  /** The number as it would be said; what is typed, where that can't be. */
  readonly said?: string | null;
}

function setRef<Element>(ref: Ref<Element> | null | undefined, element: Element | null): void {
  if (typeof ref === "function") ref(element);
  else if (ref) ref.current = element;
}

/** A text field for a number, with Stopfit's own keys below where it is typed with a finger. */
export function NumberField({
  fractions = false,
  sign = false,
  said,
  inputRef,
  ...field
}: NumberFieldProps) {
  const input = useRef<HTMLInputElement>(null);
  const { keypad, inputMode, ...handlers } = useKeypad({
    input,
    label: field.label,
    value: field.value,
    onText: field.onInput,
    said: said ?? null,
    fractions,
    sign,
  });
  return (
    <>
      <TextField
        {...field}
        keys={inputMode}
        number={handlers}
        inputRef={(element: HTMLInputElement | null) => {
          input.current = element;
          setRef(inputRef, element);
        }}
      />
      {keypad}
    </>
  );
}

/** The same in a table: an input alone, named by its row and column. */
export function NumberCell({
  label,
  value,
  wrong,
  onInput,
  onPaste,
}: {
  label: string;
  value: string;
  wrong: boolean;
  onInput: (text: string) => void;
  onPaste: (event: ClipboardEvent) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  const { keypad, ...handlers } = useKeypad({ input, label, value, onText: onInput, said: null });
  return (
    <>
      <input
        ref={input}
        type="text"
        autocomplete="off"
        data-number
        value={value}
        aria-label={label}
        aria-invalid={wrong ? true : undefined}
        onInput={(event) => onInput(event.currentTarget.value)}
        onPaste={onPaste}
        {...handlers}
      />
      {keypad}
    </>
  );
}

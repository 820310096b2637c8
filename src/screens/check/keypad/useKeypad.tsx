import type { ComponentChildren, RefObject } from "preact";
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { preferences } from "../../preferences.ts";
import { Keypad, type PadLayout } from "./Keypad.tsx";
import { type Key, pressed } from "./keyedText.ts";

/** Long enough for the tap that closes the keys to land where it was aimed, ms. */
const closingWait = 250;

const numberInputs = "main input[data-number]";

/** Room between a field and the keys below it, px. */
const margin = 12;

function wantsOwnKeys(): boolean {
  const touched = globalThis.matchMedia?.("(pointer: coarse)").matches ?? false;
  return touched && preferences().keys === "own";
}

/** Brings the field above the keys; a reading's as low as it goes, so that its drawing shows too. */
function showAbove(pad: HTMLElement, input: HTMLElement): void {
  const bar = document.querySelector<HTMLElement>(".action-bar");
  pad.style.setProperty("--pad-bottom", `${bar?.offsetHeight ?? 0}px`);
  const place = input.closest<HTMLElement>("[data-entry]") ?? input;
  const { top, bottom } = place.getBoundingClientRect();
  // On a phone on its side the keys stand beside the field, not below it.
  const keys = pad.getBoundingClientRect();
  const beside = keys.left >= place.getBoundingClientRect().right;
  const below = beside ? bar?.getBoundingClientRect().top : keys.top;
  const limit = (below ?? keys.bottom) - margin;
  const withDrawing = input.closest(".reading-layout") !== null;
  const head = document.querySelector(".screen-top")?.getBoundingClientRect().bottom ?? 0;
  if (bottom > limit || withDrawing) window.scrollBy(0, bottom - limit);
  else if (top < head) window.scrollBy(0, top - head - margin);
}

export interface KeypadHandle {
  /** For the input itself: "none" keeps the phone's own keyboard away. */
  readonly inputMode: "none" | "decimal" | "text";
  readonly onFocus: () => void;
  readonly onBlur: (event: FocusEvent) => void;
  readonly onClick: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly keypad: ComponentChildren;
}

/** Stopfit's own keys for one input, shown while it is being typed into with a finger. */
export function useKeypad({
  input,
  label,
  value,
  onText,
  said,
  fractions = false,
  sign = false,
}: PadLayout & {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly label: string;
  readonly value: string;
  readonly onText: (text: string) => void;
  /** The number as it would be said; null: what is typed, in quotes. */
  readonly said: string | null;
}): KeypadHandle {
  const [open, setOpen] = useState(false);
  const [byPhone, setByPhone] = useState(false);
  const [cleared, setCleared] = useState<string | null>(null);
  const pad = useRef<HTMLFieldSetElement>(null);
  const closing = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const own = wantsOwnKeys() && !byPhone;
  const shown = own && open;

  useEffect(() => () => clearTimeout(closing.current), []);
  useLayoutEffect(() => {
    if (shown && pad.current && input.current) showAbove(pad.current, input.current);
  }, [shown, input]);

  const write = useCallback(
    (text: string, caret: number) => {
      const element = input.current;
      if (element) {
        element.value = text;
        element.setSelectionRange(caret, caret);
      }
      onText(text);
    },
    [input, onText],
  );
  const onKey = (key: Key) => {
    const element = input.current;
    const start = element?.selectionStart ?? value.length;
    const end = element?.selectionEnd ?? value.length;
    const next = pressed({ text: value, start, end }, key);
    setCleared(key.does === "clear" && value !== "" ? value : null);
    write(next.text, next.end);
  };
  const close = () => {
    setOpen(false);
    setByPhone(false);
    setCleared(null);
  };
  const leave = ({ relatedTarget }: FocusEvent) => {
    const stays =
      relatedTarget === input.current ||
      (relatedTarget instanceof Node && pad.current?.contains(relatedTarget));
    if (stays) return;
    clearTimeout(closing.current);
    // Another number brings its own keys: these would lie over them.
    if (relatedTarget instanceof Element && relatedTarget.matches(numberInputs)) close();
    else closing.current = setTimeout(close, closingWait);
  };
  const enter = () => {
    clearTimeout(closing.current);
    setOpen(true);
  };
  const next = shown ? nextNumber(input.current) : undefined;

  return {
    inputMode: own ? "none" : fractions ? "text" : "decimal",
    onFocus: enter,
    onClick: enter,
    onBlur: leave,
    onKeyDown: ({ key }) => {
      if (key === "Escape") setOpen(false);
    },
    keypad: shown && (
      <Keypad
        label={label}
        fractions={fractions}
        sign={sign}
        said={said ?? (value === "" ? "" : `“${value}”`)}
        onward={next ? "next" : "done"}
        canRestore={cleared !== null && value === ""}
        padRef={pad}
        onKey={onKey}
        onRestore={() => {
          if (cleared === null) return;
          write(cleared, cleared.length);
          setCleared(null);
        }}
        onOnward={() => {
          if (next) {
            next.focus();
            next.select();
          } else {
            clearTimeout(closing.current);
            input.current?.blur();
            close();
          }
        }}
        onPhoneKeys={() => {
          setByPhone(true);
          // The keyboard comes up only for a field that is entered anew.
          input.current?.blur();
          setTimeout(() => {
            clearTimeout(closing.current);
            input.current?.focus();
          });
        }}
        onLeave={leave}
      />
    ),
  };
}

/** The number that comes after this one on the screen, if there is one to be seen. */
function nextNumber(input: HTMLInputElement | null): HTMLInputElement | undefined {
  const all = [...document.querySelectorAll<HTMLInputElement>(numberInputs)].filter(
    (each) => each.closest("details:not([open])") === null,
  );
  return input && all.includes(input) ? all[all.indexOf(input) + 1] : undefined;
}

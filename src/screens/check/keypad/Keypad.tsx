import type { ComponentChildren, Ref } from "preact";
import * as messages from "../../../words/compiled/screens/check/keypad.ts";
import { Icon, type IconName } from "../../parts/Icon.tsx";
import { eighths, type Key } from "./keyedText.ts";

export interface PadLayout {
  /** Fractions of an inch beside the digits. */
  readonly fractions?: boolean;
  /** A key for the sign. */
  readonly sign?: boolean;
}

interface KeypadProps extends PadLayout {
  /** What the keys type into. */
  readonly label: string;
  /** The number as it would be said, for who does not see it change. */
  readonly said: string;
  /** What the key in the corner does: on to the next number, or the keys are put away. */
  readonly onward: "next" | "done";
  readonly canRestore: boolean;
  readonly padRef: Ref<HTMLFieldSetElement>;
  readonly onKey: (key: Key) => void;
  readonly onRestore: () => void;
  readonly onOnward: () => void;
  readonly onPhoneKeys: () => void;
  readonly onLeave: (event: FocusEvent) => void;
}

const digit = (each: string): Key => ({ does: "digit", digit: each });

function PadKey({
  name,
  icon,
  look = "",
  onPress,
  children,
}: {
  name?: string;
  icon?: IconName;
  look?: string;
  onPress: () => void;
  children?: ComponentChildren;
}) {
  return (
    <button
      type="button"
      class={`pad-key ${look}`}
      aria-label={name}
      // The caret stays where it is: a key takes no focus from the field when it is touched.
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {icon ? <Icon name={icon} size={26} /> : children}
    </button>
  );
}

/** Words of a key that are longer than its room are written smaller. */
function small(...words: readonly string[]): string {
  return words.some((word) => word.length > 6) ? "pad-small" : "";
}

/** Keys for one number, under the thumb. */
export function Keypad({
  label,
  fractions = false,
  sign = false,
  said,
  onward,
  canRestore,
  padRef,
  onKey,
  onRestore,
  onOnward,
  onPhoneKeys,
  onLeave,
}: KeypadProps) {
  const digits = (row: string) =>
    [...row].map((each) => (
      <PadKey key={each} onPress={() => onKey(digit(each))}>
        {each}
      </PadKey>
    ));
  const parts = (from: number, to: number) =>
    eighths.slice(from, to).map((fraction) => (
      <PadKey key={fraction} look="pad-part" onPress={() => onKey({ does: "fraction", fraction })}>
        {fraction}
      </PadKey>
    ));
  const step = (denominator: 16 | 32) => (
    <PadKey
      look="pad-part pad-step"
      name={`Add 1/${denominator}`}
      onPress={() => onKey({ does: "step", denominator })}
    >
      +1/{denominator}
    </PadKey>
  );
  const clear = canRestore ? (
    <PadKey name={messages.bringBackWhatWas} icon="undo" look="pad-deed" onPress={onRestore} />
  ) : (
    <PadKey look={`pad-deed ${small(messages.clear)}`} onPress={() => onKey({ does: "clear" })}>
      {messages.clear}
    </PadKey>
  );
  const phone = (
    <PadKey name={messages.phonesKeyboard} icon="keyboard" look="pad-deed" onPress={onPhoneKeys} />
  );
  const next = (
    <PadKey
      name={onward === "next" ? messages.nextField : messages.doneHideKeypad}
      look={`pad-next ${!fractions && !sign ? "pad-tall" : ""} ${small(...(onward === "next" ? [messages.next, messages.field] : [messages.done]))}`}
      onPress={onOnward}
    >
      {onward === "next" ? (
        <>
          {messages.next}
          <br />
          {messages.field}
        </>
      ) : (
        messages.done
      )}
    </PadKey>
  );
  return (
    <fieldset ref={padRef} class={`keypad ${fractions ? "keypad-wide" : ""}`} onFocusOut={onLeave}>
      <legend class="unseen">{messages.keysFor({ label })}</legend>
      <output class="unseen" aria-live="polite">
        {said}
      </output>
      {digits("789")}
      {fractions ? parts(0, 3) : clear}
      {digits("456")}
      {fractions ? parts(3, 6) : phone}
      {digits("123")}
      {fractions && (
        <>
          {parts(6, 7)}
          {step(16)}
          {step(32)}
        </>
      )}
      {!fractions && sign && (
        <PadKey name={messages.plusOrMinus} look="pad-deed" onPress={() => onKey({ does: "sign" })}>
          ±
        </PadKey>
      )}
      {!fractions && !sign && next}
      <PadKey name={messages.point} onPress={() => onKey({ does: "point" })}>
        .
      </PadKey>
      {digits("0")}
      <PadKey name={messages.takeBackLast} icon="erase" onPress={() => onKey({ does: "erase" })} />
      {fractions && (
        <>
          {clear}
          {sign ? (
            <PadKey
              name={messages.plusOrMinus}
              look="pad-deed"
              onPress={() => onKey({ does: "sign" })}
            >
              ±
            </PadKey>
          ) : (
            phone
          )}
        </>
      )}
      {(fractions || sign) && next}
    </fieldset>
  );
}

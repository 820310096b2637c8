import { useCallback, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { addCode, type CodeCollection, readCode } from "../../sharing/codeCollection.ts";
import type { Frame } from "../../sharing/frame.ts";

export interface ScannedCodes {
  readonly collection: CodeCollection | null;
  readonly fault: Fault | null;
  /** The code that belongs to another check than the one begun; null where there is none. */
  readonly other: Frame | null;
  /** One scanned text. */
  take(text: string): void;
  startOver(frame: Frame | null): void;
}

/** Codes as they are scanned; `onWhole` once those of one check are all there. */
export function useCodes(begun: Frame | null, onWhole: (frame: Frame) => void): ScannedCodes {
  const first = begun === null ? null : addCode(null, begun);
  const [collection, setCollection] = useState<CodeCollection | null>(
    first?.ok === true ? first.value.collection : null,
  );
  const [fault, setFault] = useState<Fault | null>(null);
  const [other, setOther] = useState<Frame | null>(null);
  const current = useRef(collection);
  const done = useRef(false);

  const add = useCallback(
    (frame: Frame) => {
      if (done.current) return;
      const scanned = addCode(current.current, frame);
      if (!scanned.ok) {
        setFault(scanned.fault);
        setOther(frame);
        return;
      }
      setFault(null);
      setOther(null);
      if (!scanned.value.repeated) {
        navigator.vibrate?.(60);
        current.current = scanned.value.collection;
        setCollection(scanned.value.collection);
      }
      if (scanned.value.whole) {
        done.current = true;
        onWhole(scanned.value.whole);
      }
    },
    [onWhole],
  );

  const take = useCallback(
    (text: string) => {
      const frame = readCode(text);
      if (frame.ok) add(frame.value);
      else if (!done.current) setFault(frame.fault);
    },
    [add],
  );

  const startOver = useCallback(
    (frame: Frame | null) => {
      current.current = null;
      setCollection(null);
      setFault(null);
      setOther(null);
      if (frame) add(frame);
    },
    [add],
  );

  return { collection, fault, other, take, startOver };
}

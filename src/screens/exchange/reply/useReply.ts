import { useCallback, useEffect, useState } from "preact/hooks";
import type { Fault } from "../../../physics/outcome.ts";
import { capital } from "../../../physics/sentence.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { limitKindOf } from "../../../records/entry/entryPath.ts";
import { entryName } from "../../../records/entry/readingCatalogue.ts";
import { said } from "../../../saying/texts.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import type { StoredReply } from "../../../storage/deskDatabase.ts";
import { ReplyStore } from "../../../storage/replyStore.ts";
import { stepFor, stepsOf } from "../../guide/steps.ts";
import { entryText } from "./takeReplies.ts";

interface AskedStep {
  readonly id: string;
  readonly name: string;
  /** The step where it is typed. */
  readonly step: string;
  readonly done: boolean;
}

export interface OpenReply {
  readonly kept: StoredReply;
  readonly stored: StoredCheck;
  readonly asked: readonly AskedStep[];
  readonly fault: Fault | null;
  markSame(reading: string): void;
  close(): Promise<void>;
}

function askedOf({ reply, before, same }: StoredReply, stored: StoredCheck): AskedStep[] {
  const steps = stepsOf(stored);
  return reply.readings.map((id) => {
    const name = said(entryName(id, limitKindOf(stored.record, id)));
    return {
      id,
      name: capital(name),
      step: stepFor(id, steps) ?? id,
      done: same.includes(id) || entryText(stored, id) !== before[id],
    };
  });
}

const lookAgainMs = 700;

/** The open reply to a check on this phone and how far it is done; null: not known yet. */
export function useReply(store: CheckStore, storedId: string): OpenReply | "none" | null {
  const [kept, setKept] = useState<StoredReply | null>(null);
  const [none, setNone] = useState(false);
  const [stored, setStored] = useState<StoredCheck | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [replies] = useState(() => new ReplyStore());
  useEffect(() => () => replies.dispose(), [replies]);

  const load = useCallback(async () => {
    const found = await replies.openFor(storedId);
    setNone(!found.ok || found.value === null);
    if (found.ok) setKept(found.value);
    else setFault(found.fault);
  }, [replies, storedId]);
  useEffect(() => {
    load();
  }, [load]);

  // What is typed on the screen below is kept within a quarter of a second, and seen here soon after.
  useEffect(() => {
    if (kept === null) return;
    let left = false;
    const look = async () => {
      const found = await store.get(storedId);
      if (!left && found.ok && found.value) {
        const { value } = found;
        setStored((known) => (known?.revision === value.revision ? known : value));
      }
    };
    look();
    const timer = setInterval(look, lookAgainMs);
    return () => {
      left = true;
      clearInterval(timer);
    };
  }, [store, storedId, kept]);

  if (kept === null && none) return "none";
  if (kept === null || stored === null) return null;
  return {
    kept,
    stored,
    asked: askedOf(kept, stored),
    fault,
    markSame: async (reading) => {
      await replies.markSame(kept.id, reading);
      await load();
    },
    close: async () => {
      await replies.close(kept.id);
      await load();
    },
  };
}

import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Outcome } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { RowSetAside } from "../../storage/checkRow.ts";
import { noteCount } from "../saved/savedCount.ts";
import type { OpenedStore } from "../useStore.ts";

/** What the phone's storage lists, and how something in it is changed. */
export function useChecks(opened: OpenedStore | null) {
  const [checks, setChecks] = useState<readonly ListedCheck[] | null>(null);
  const [deleted, setDeleted] = useState<readonly ListedCheck[]>([]);
  const [aside, setAside] = useState<readonly RowSetAside[]>([]);
  const [said, setSaid] = useState<Sentence | null>(null);
  const seenAny = useRef(false);
  const store = opened?.store ?? null;

  const refresh = useCallback(async () => {
    if (!store) return;
    const [present, gone, damaged] = await Promise.all([
      store.list(),
      store.list("deleted"),
      store.setAside(),
    ]);
    setAside(damaged.ok ? damaged.value : []);
    if (!present.ok) {
      setSaid(present.fault.sentence);
      setChecks([]);
      return;
    }
    setChecks(present.value);
    setDeleted(gone.ok ? gone.value : []);
    if (!gone.ok || opened?.fault) return;
    const count = present.value.length + gone.value.length;
    seenAny.current ||= count > 0;
    // None where none was seen: they may have been cleared, which is still to be told.
    if (seenAny.current) noteCount(count);
  }, [store, opened?.fault]);

  useEffect(() => {
    if (!store) return;
    refresh();
    return store.subscribe(() => refresh());
  }, [store, refresh]);

  const settle = async (work: Promise<Outcome<unknown>>) => {
    const outcome = await work;
    setSaid(outcome.ok ? null : outcome.fault.sentence);
    await refresh();
    return outcome.ok;
  };

  /** A check of the list with its pictures, for what takes it elsewhere. */
  const withWhole = async (id: string, use: (whole: StoredCheck) => unknown) => {
    const found = store && (await store.get(id));
    if (found?.ok && found.value) await use(found.value);
    else if (found?.ok === false) setSaid(found.fault.sentence);
    else await refresh();
  };

  return { store, checks, deleted, aside, said, setSaid, refresh, settle, withWhole };
}

export type ChecksHere = ReturnType<typeof useChecks>;

import { changeRecord, type StoredCheck } from "../check/storedCheck.ts";
import { setEntry } from "./changes.ts";

const id = "stop.damping";

/** Whether the stop was tested at speed. A table typed before is there again when it is "yes". */
export function withTestedAtSpeed(stored: StoredCheck, tested: boolean): StoredCheck {
  const marked = changeRecord(stored, (record) => ({
    ...record,
    stop: { ...record.stop, testedAtSpeed: tested, damping: null },
  }));
  const entry = marked.entries[id];
  return tested && entry ? setEntry(marked, id, entry) : marked;
}

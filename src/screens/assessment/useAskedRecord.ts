import { useRef } from "preact/hooks";
import { isSameBesideAdvice } from "../../records/check/advised.ts";
import type { PartialCheckRecord } from "../../records/check/checkRecord.ts";

/**
 * The record that an answer is asked of: the same one until something of it changes beside what was advised,
 * so that keeping the advice does not ask for it anew.
 */
export function useAskedRecord(record: PartialCheckRecord): PartialCheckRecord {
  const asked = useRef(record);
  if (!isSameBesideAdvice(asked.current, record)) asked.current = record;
  return asked.current;
}

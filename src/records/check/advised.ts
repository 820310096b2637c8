import { canonicalText } from "../text/canonicalText.ts";
import type { Advice, PartialCheckRecord } from "./checkRecord.ts";
import { recordBounds } from "./recordFormat.ts";
import type { StoredCheck } from "./storedCheck.ts";

/** What makes one piece of advice another: not when it was shown, nor which parts library was in use. */
function contentOfAdvice({ sides, part }: Advice): string {
  return canonicalText([sides, part ?? null]);
}

/** Was the same prescribed, whatever was said of it? Spacers are the same within half a mm. */
export function isSameAdvice({ part: one }: Advice, { part: other }: Advice): boolean {
  if (one === undefined || other === undefined) return one === other;
  const what = ({ name, partNumber, revision, change }: NonNullable<Advice["part"]>) =>
    canonicalText([name, partNumber ?? null, revision ?? null, change]);
  return what(one) === what(other) && Math.abs(one.spacerMm - other.spacerMm) < 0.5;
}

/** Each once, by when it was shown last; of too many the oldest go. */
function latest(advised: readonly Advice[]): readonly Advice[] {
  const byContent = new Map<string, Advice>();
  for (const advice of advised) {
    byContent.delete(contentOfAdvice(advice));
    byContent.set(contentOfAdvice(advice), advice);
  }
  return [...byContent.values()].slice(-recordBounds.advised);
}

/**
 * The check with what an answer has shown; the same check where that is what was shown last. What was shown
 * before stays: somebody may have gone by it. It is no change of the check by a person, and so leaves the
 * time of its last one.
 */
export function withAdvice(stored: StoredCheck, advice: Advice): StoredCheck {
  const { advised = [] } = stored.record;
  const last = advised.at(-1);
  if (last !== undefined && contentOfAdvice(last) === contentOfAdvice(advice)) return stored;
  return {
    ...stored,
    record: { ...stored.record, advised: latest([...advised, advice]) },
  };
}

/** What two versions of a check were shown, put together in order of time. */
export function withMergedAdvice(
  merged: PartialCheckRecord,
  mine: readonly Advice[] = [],
  theirs: readonly Advice[] = [],
): PartialCheckRecord {
  const all = [...mine, ...theirs].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return all.length === 0 ? merged : { ...merged, advised: latest(all) };
}

function withoutAdvice<Fields extends { readonly advised?: unknown }>({
  advised: _,
  ...record
}: Fields): Omit<Fields, "advised"> {
  return record;
}

/** Are two records the same field by field, whatever was advised on them? */
export function isSameBesideAdvice(before: PartialCheckRecord, after: PartialCheckRecord): boolean {
  const [old, now] = [Object.entries(withoutAdvice(before)), withoutAdvice(after)];
  return (
    old.length === Object.keys(now).length &&
    old.every(([name, value]) => now[name as keyof typeof now] === value)
  );
}

/** Has nothing of a check changed but what was advised? */
export function isAdviceAlone(before: StoredCheck, after: StoredCheck): boolean {
  return (
    before.record !== after.record &&
    before.entries === after.entries &&
    before.choices === after.choices &&
    isSameBesideAdvice(before.record, after.record)
  );
}

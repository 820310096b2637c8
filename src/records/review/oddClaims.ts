import type { ReadingId } from "../../physics/readings/index.ts";
import { capital, type QuantityKind } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/review.ts";
import type { CheckRecord, TypedReading } from "../check/checkRecord.ts";
import { parseText } from "../entry/entry.ts";
import { catalogueEntry, entryUnit } from "../entry/readingCatalogue.ts";
import type { PackPlatforms } from "../pack/pack.ts";
import { cleanName } from "../text/soundText.ts";
import { otherDemands } from "./deskDemands.ts";
import type { NamedReading, OddReading } from "./oddReading.ts";

/** Typed text may be rounded where the value is not, by this and a thousandth. */
const rounding = 0.1;

/** The first text that is another number than its value; null: none. */
function otherTyped({ id, reading }: NamedReading): { text: string; value: number } | null {
  const { kind, allowed } = catalogueEntry(id);
  for (const [index, value] of reading.values.entries()) {
    const text = reading.typed?.[index];
    if (text === undefined || text.trim() === "") continue;
    const near = (["mm", "in"] as const).some((unit) => {
      const parsed = parseText(text, kind, entryUnit(kind, unit), allowed);
      const off = parsed.ok ? Math.abs(parsed.value.value - value) : Number.POSITIVE_INFINITY;
      return off <= rounding + Math.abs(value) / 1000;
    });
    if (!near) return { text, value };
  }
  return null;
}

function isMeasured(reading: TypedReading): boolean {
  return reading.source === undefined || reading.source === "measured";
}

function ofOneReading(named: NamedReading, quantityKind: QuantityKindOf): OddReading[] {
  const { id, name, reading } = named;
  const odd: OddReading[] = [];
  const typed = otherTyped(named);
  if (typed !== null) {
    odd.push({
      reading: id,
      kind: "typed",
      sentence: [
        messages.forWasTypedBut({
          name,
          text: cleanName(typed.text, 30),
          typed: { kind: quantityKind(id), value: typed.value },
        }),
      ],
    });
  }
  if (reading.tol === 0 && isMeasured(reading)) {
    odd.push({
      reading: id,
      kind: "noTolerance",
      sentence: [messages.isGivenAsExact({ name: capital(name) })],
    });
  }
  return odd;
}

type QuantityKindOf = (id: ReadingId) => QuantityKind;

/** What a check claims of itself that someone at a desk should see before going by it. */
export function oddClaims(
  record: CheckRecord,
  named: readonly NamedReading[],
  pack: PackPlatforms | null,
  quantityKind: QuantityKindOf,
  now: Date,
): OddReading[] {
  const odd = named.flatMap((each) => ofOneReading(each, quantityKind));
  if (record.stop.usableTolMm === 0) {
    odd.push({
      reading: "stop.usableCompressionMm",
      kind: "noTolerance",
      sentence: [messages.usableCompressionIsGiven],
    });
  }
  for (const { name, words, theirs, ours } of otherDemands(record, pack)) {
    odd.push({
      reading: `rules.${name}`,
      kind: "demand",
      sentence: [messages.checksOwnJudgedHere({ words, theirs, ours })],
    });
  }
  if (Date.parse(record.createdAt) > now.getTime()) {
    odd.push({
      reading: "createdAt",
      kind: "date",
      sentence: [messages.checkSaysThatIt({ createdAt: record.createdAt.slice(0, 10) })],
    });
  }
  return odd;
}

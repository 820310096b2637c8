import type { FieldPath } from "../../physics/outcome.ts";
import { limitOf, type ReadingId } from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { type Entry, entryLengthUnit, readEntry } from "../../records/entry/entry.ts";
import { limitKindOf } from "../../records/entry/entryPath.ts";
import { catalogueEntry, entryName } from "../../records/entry/readingCatalogue.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";

/** "Left gap": an entry's name at the start of a line. */
export function lineName(stored: StoredCheck, id: FieldPath): string {
  const limit = limitOf(id);
  const corner = stored.record.corners.find(({ side }) => side === limit?.side);
  const name =
    limit !== null && (corner?.limits.length ?? 0) === 0
      ? messages.whatCouldHitFirst({ side: limit.side })
      : said(entryName(id, limitKindOf(stored.record, id)));
  return capital(name);
}

/** "40 %", to five per cent: more would be more than is known beforehand. */
function aboutShare(share: number): string {
  const five = Math.round(20 * share) * 5;
  return five < 5 ? messages.lessThan5 : messages.about({ five: Math.min(five, 95) });
}

/** What taking this reading would do, said beforehand. */
export function removesWords(removes: number | null): string {
  return removes === null
    ? messages.nothingCanBeDecided
    : messages.wouldRemoveOfMargin({ aboutShare: aboutShare(removes) });
}

/** "58.7 mm", "58.7 and 58.9 mm, ± 1 mm": what an entry holds. */
export function valuesWords(id: ReadingId, entry: Entry): string {
  const { kind } = catalogueEntry(id);
  const texts = entry.texts.map((text) => text.trim()).filter((text) => text !== "");
  const unit = entry.unit === "deg" ? "°" : ` ${entry.unit}`;
  const last = texts.at(-1) ?? "";
  const listed =
    texts.length > 1 ? messages.and({ texts: texts.slice(0, -1).join(", "), last }) : last;
  const withUnit = /[a-z°"]\.?$/i.test(last) ? listed : `${listed}${unit}`;
  const reading = readEntry(id, entry);
  if (!reading.ok || (kind !== "length" && kind !== "angle" && kind !== "mass")) return withUnit;
  return sentenceText(
    [`${withUnit}, ± `, { kind, value: reading.value.tol }],
    entryLengthUnit(entry),
  );
}

/** A chance in words: it is an expectation from the readings as they stand, no promise. */
export function chanceWords(chance: number): string {
  if (chance >= 0.95) return messages.almostSurely;
  if (chance >= 0.8) return messages.veryLikely;
  if (chance >= 0.6) return messages.inAbout2Of;
  if (chance >= 0.4) return messages.inAboutEveryOther;
  if (chance >= 0.25) return messages.inAbout1Of;
  if (chance >= 0.1) return messages.inAbout1Of6;
  return messages.hardlyEverByItself;
}

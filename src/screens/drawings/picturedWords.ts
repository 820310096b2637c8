import type { LimitKind } from "../../physics/fitment.ts";
import type { LimitPlace } from "../../physics/readings/limitReadings.ts";
import { readingWords } from "../readings/readingWords.ts";
import type { ReadingWords, WordedLayout } from "../readings/wordedReading.ts";
import type { PicturedReading } from "./drawnNumbers.ts";

const recordName: { readonly [Name in PicturedReading]?: string } = {
  cornerMass: "cornerMassKg",
  freeHeight: "stop.freeHeight",
  usableCompression: "stop.usableCompressionMm",
};

/** The words of a pictured reading; a limit by its kind and place. */
export function picturedWords(
  reading: PicturedReading,
  layout: WordedLayout,
  at: LimitPlace = "wheel",
): ReadingWords {
  const limitKind = /^limit:(\w+)$/.exec(reading)?.[1] as LimitKind | undefined;
  if (limitKind) return readingWords("left.limits.0", layout, { kind: limitKind, at });
  if (reading === "limitDistance") {
    return readingWords("left.limits.0.distance", layout, { kind: "other", at: "arm" });
  }
  return readingWords(recordName[reading] ?? reading, layout);
}

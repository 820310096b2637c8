import { type LimitPlace, limitKinds, type ValueName } from "../../physics/readings/index.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { readingWords } from "../readings/readingWords.ts";
import type { PicturedReading } from "./drawnNumbers.ts";

/** The words of a pictured reading; a limit by its kind and place. */
export function picturedWords(
  reading: PicturedReading,
  layout: WordedLayout,
  at: LimitPlace = "wheel",
): ReadingWords {
  switch (reading) {
    case "limitDistance":
      return readingWords("left.limits.0.distance", layout, { kind: "other", at: "arm" });
    case "cornerMass":
      return readingWords("cornerMassKg", layout);
    case "freeHeight":
      return readingWords("stop.freeHeight", layout);
    case "usableCompression":
      return readingWords("stop.usableCompressionMm", layout);
    default: {
      const kind = limitKinds.find((each) => reading === `limit:${each}`);
      return kind === undefined
        ? readingWords(reading as ValueName, layout)
        : readingWords("left.limits.0", layout, { kind, at });
    }
  }
}

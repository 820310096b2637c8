import {
  isGeometryReadingName,
  type ReadingId,
  type ValueName,
  withoutSide,
} from "../../physics/readings/index.ts";
import type { PartialCheckRecord } from "../../records/check/checkRecord.ts";
import * as messages from "../../words/compiled/screens/readings.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import type { ReadingWords, WordedLayout, WordedLimit } from "../layouts/wordedReading.ts";
import { cornerWords } from "./cornerWords.ts";
import { distanceWords, limitWords } from "./limitWords.ts";
import { toldGeometry } from "./toldGeometry.ts";

/** What the words depend on, of a check as far as it goes: an arm where the layout is not known yet. */
export function wordedLayout({ layout }: PartialCheckRecord): WordedLayout {
  return { ...layout, kind: layout?.kind ?? "arm" };
}

/** How one reading is taken on this layout; an id that no screen asks for is named by itself. */
export function readingWords(
  id: ReadingId | ValueName,
  layout: WordedLayout,
  limit?: WordedLimit,
): ReadingWords {
  const name = withoutSide(id);
  if (limit) return name.endsWith(".distance") ? distanceWords : limitWords(limit, layout);
  if (isGeometryReadingName(name)) return toldGeometry[name].words(layout);
  return cornerWords(name, layout) ?? { name, how: "", wrong: "", a: "", b: "" };
}

/** What counts as plus for a lean or an angle of this layout, for the corner of its picture. */
export function plusWords(of: "line" | "lean", { kind, armRole }: WordedLayout): string {
  if (of === "lean") {
    return (
      layoutsOnScreen[kind].words.plusLean ??
      (armRole === "carriesWheel" ? messages.topTowardFront : messages.topTowardPivot)
    );
  }
  return messages.outerEndLower;
}

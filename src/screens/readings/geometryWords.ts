import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import { layoutKinds, type OwnReadingOf } from "../../physics/readings/index.ts";
import { ownReadings } from "../layouts/ownReadings.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { armWords } from "./armWords.ts";
import { boltWords } from "./boltWords.ts";
import { heightWords } from "./heightWords.ts";
import { linkageWords } from "./linkageWords.ts";

/** The readings that several layouts take; one without words is a type error. */
const shared: {
  readonly [Name in Exclude<GeometryReadingName, OwnReadingOf<LayoutKind>>]: (
    layout: WordedLayout,
  ) => ReadingWords;
} = { ...armWords, ...boltWords, ...heightWords, ...linkageWords };

/** Those that one layout alone takes. */
const own = Object.assign({}, ...layoutKinds.map(ownReadings)) as ReturnType<typeof ownReadings>;

/** A reading of the geometry in words. */
export function geometryWords(name: GeometryReadingName, layout: WordedLayout): ReadingWords {
  return own[name]?.words(layout) ?? shared[name as keyof typeof shared](layout);
}

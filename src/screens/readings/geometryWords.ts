import type { GeometryReadingName } from "../../physics/readings/index.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { armWords } from "./armWords.ts";
import { axleWords } from "./axleWords.ts";
import { boltWords } from "./boltWords.ts";
import { heightWords } from "./heightWords.ts";
import { linkageWords } from "./linkageWords.ts";
import { strutWords } from "./strutWords.ts";

/** Every reading of the geometry in words; one without words is a type error. */
export const geometryWords: {
  readonly [Name in GeometryReadingName]: (layout: WordedLayout) => ReadingWords;
} = {
  ...axleWords,
  ...armWords,
  ...boltWords,
  ...heightWords,
  ...strutWords,
  ...linkageWords,
};

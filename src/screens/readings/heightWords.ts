import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";
import { outerEnd, stopPoint } from "./places.ts";

const byHeights = "The phone works out the angle from two heights and the arm's length.";

function height(of: (layout: WordedLayout) => string, more: Partial<ReadingWords> = {}) {
  return (layout: WordedLayout): ReadingWords => ({
    name: `Height of ${of(layout)}`,
    how: `From the level ground (A) straight up to the ${of(layout)}'s center (B).`,
    wrong: "The ground must be level from here to the other height. The tape must stand upright.",
    a: "level ground",
    b: of(layout),
    note: byHeights,
    ...more,
  });
}

const pivotLine = {
  how: "From the level ground (A) straight up to the center of the pivot bolts (B). One bolt higher: the middle of both.",
} as const;

export const heightWords = {
  pivotHeight: height(() => "pivot line", pivotLine),
  outerHeight: height(outerEnd),
  stopHeight: (layout: WordedLayout): ReadingWords => ({
    ...height(() => "stop's landing point")(layout),
    how: `From the level ground (A) straight up to ${layout.stopOn === "arm" ? "the tip of the stop" : "the patch the stop lands on"} (B).`,
    b: stopPoint(layout),
  }),
  mountHeight: height(() => "lower shock bolt"),
  otherPivotHeight: height(() => "other pivot line", pivotLine),
  otherOuterHeight: height(() => "other arm's joint"),
} as const;

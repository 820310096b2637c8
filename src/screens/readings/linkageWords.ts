import { lowerPositive } from "../layouts/lowerPositive.ts";
import type { ReadingWords, WordedLayout } from "../layouts/wordedReading.ts";

/** The arm that was not measured first. */
function other({ armRole }: WordedLayout): string {
  return armRole === "upper" ? "lower" : "upper";
}

export const linkageWords = {
  otherArmAngle: (layout: WordedLayout): ReadingWords => ({
    name: `Angle of the ${other(layout)} arm`,
    how: `Straight across the vehicle. Between level and the line from the ${other(layout)} arm's pivot line (A) to its outer joint (B).`,
    wrong: "Not along the arm's edge, which is often bent.",
    a: `${other(layout)} pivot line`,
    b: `${other(layout)} joint`,
    note: lowerPositive,
  }),
  otherArmLength: (layout: WordedLayout): ReadingWords => ({
    name: `Length of the ${other(layout)} arm`,
    how: `Square from the ${other(layout)} arm's pivot line (A) to the center of its outer joint (B).`,
    wrong: "Taken from one bolt it comes out too long.",
    a: `${other(layout)} pivot line`,
    b: `${other(layout)} joint, center`,
    skipped: "Skip it and the arm is taken as very long: a little less exact.",
  }),
  jointHeight: (): ReadingWords => ({
    name: "Upper joint above lower",
    how: "Straight up from the center of the lower ball joint (A) to the level of the upper one (B).",
    wrong: "Upright, not along the knuckle.",
    a: "lower joint, center",
    b: "level of the upper",
  }),
  jointInset: (): ReadingWords => ({
    name: "Upper joint inboard of lower",
    how: "Level, across the vehicle: how far the upper joint (A) stands inboard of the lower one (B).",
    wrong: "Not along the arm. Hang a plumb line from the upper joint and measure from it.",
    a: "upper joint, center",
    b: "above the lower joint",
    note: "Inboard, toward the frame, is positive. Upper joint further out: minus.",
    skipped: "Skip it and 0 is used.",
  }),
  tyreOffset: (): ReadingWords => ({
    name: "Lower joint to middle of tire",
    how: "Level, across the vehicle: from the center of the lower joint (A) out to the middle of the tread (B).",
    wrong: "To the middle of the tread, not to the rim's edge.",
    a: "lower joint, center",
    b: "middle of the tread",
  }),
  wheelCentreAbove: (): ReadingWords => ({
    name: "Wheel center above joint",
    how: "Straight up from the center of the lower joint (A) to the height of the wheel's center (B).",
    wrong: "Both heights from the same level ground: their difference counts.",
    a: "lower joint, center",
    b: "wheel center's height",
    skipped: "Skip it and 0 is used.",
  }),
} as const;

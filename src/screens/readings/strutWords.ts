import type { ReadingWords } from "../layouts/wordedReading.ts";
import { lowerPositive } from "./places.ts";

export const strutWords = {
  lowerArmLength: (): ReadingWords => ({
    name: "Length of the lower arm",
    how: "Square from the lower arm's pivot line (A) to the center of its ball joint (B).",
    wrong: "Taken from one bolt it comes out too long.",
    a: "pivot line",
    b: "ball joint, center",
  }),
  lowerArmAngle: (): ReadingWords => ({
    name: "Angle of the lower arm",
    how: "Straight across the vehicle: between level and the line from the pivot line (A) to the ball joint (B).",
    wrong: "Not along the arm's edge, which is often bent.",
    a: "pivot line",
    b: "ball joint",
    note: lowerPositive,
  }),
  jointToTop: (): ReadingWords => ({
    name: "Ball joint to top mount",
    how: "From the center of the lower ball joint (A) straight to the middle of the strut's top mount (B).",
    wrong: "To the middle of the mount's rubber, not to the top of the stud.",
    a: "ball joint, center",
    b: "middle of top mount",
  }),
  jointToTopLean: (): ReadingWords => ({
    name: "Lean of that line",
    how: "Hold a plumb line at the top mount (B). Read the angle from it to the line to the ball joint (A).",
    wrong: "Not the strut's own lean: the ball joint often stands further out.",
    a: "ball joint",
    b: "top mount",
    note: "Top toward the middle is positive.",
    skipped: "Skip it and the strut's angle is used.",
  }),
} as const;

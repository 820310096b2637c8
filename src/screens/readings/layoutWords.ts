import type { LayoutKind } from "../../physics/fitment.ts";

/** A layout in words. */
interface LayoutWords {
  /** To choose it by, with its picture. */
  readonly title: string;
  readonly description: string;
  /** In a list of vehicles. */
  readonly short: string;
  /** What the stop meets, where nothing else was said: 22 letters at most. */
  readonly landing: string;
  /** The same where the stop itself stands on the arm. */
  readonly landingOfStopOnArm?: string;
  /** The stop sits on a rod, which its gap is measured along. */
  readonly onRod: boolean;
  /** What an arrow of plus says for the stop's lean; none where the arm's pivot says it. */
  readonly plusLean?: string;
}

export const layoutWords: { readonly [Kind in LayoutKind]: LayoutWords } = {
  arm: {
    title: "Stop on an arm",
    description: "A control arm swings up and meets a stop under the frame.",
    short: "Stop on an arm",
    landing: "pad on the arm",
    landingOfStopOnArm: "pad on the frame",
    onRod: false,
  },
  damper: {
    title: "Stop on a shock",
    description: "A shock stands on the arm; the stop sits on the shock's rod.",
    short: "Stop on the shock rod, on an arm",
    landing: "top of shock body",
    onRod: true,
  },
  strut: {
    title: "Stop on a strut",
    description: "A strut carries the wheel; the stop sits on its rod, inside the spring.",
    short: "Strut",
    landing: "top of strut body",
    onRod: true,
    plusLean: "top toward the middle = +",
  },
  axle: {
    title: "Stop over a beam axle",
    description: "One axle joins both wheels; a stop hangs from the frame over each end.",
    short: "Beam axle",
    landing: "pad on the axle",
    onRod: false,
    plusLean: "top toward the middle = +",
  },
};

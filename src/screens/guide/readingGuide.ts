import type { GeometryReadingName, LayoutKind, LimitKind } from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/outcome.ts";

export interface ReadingGuide {
  /** The screen's heading and the step's name. */
  readonly name: string;
  /** How to take it: from A to B. */
  readonly how: string;
  /** What goes wrong. */
  readonly wrong: string;
  /** What happens without it, where it can be skipped. */
  readonly skipped?: string;
  /** What an angle's sign means, and the like: read with the number being typed. */
  readonly note?: string;
}

const lowerPositive =
  "Lower at the wheel is positive. Higher at the wheel: type it with a minus, or tap + / −.";

const pivotToOuter: ReadingGuide = {
  name: "Pivot to outer joint",
  how: "From the arm's pivot bolt, its centre (A), straight to the outer joint's centre (B). Trailing arm: to the wheel centre.",
  wrong:
    "Measured to the edge of the wheel or the brake disc, the lever ratio comes out too large.",
};

const armAngle: ReadingGuide = {
  name: "Arm angle",
  how: "Between a level line and the line from the pivot bolt's centre (A) to the outer joint's centre (B).",
  wrong: "Not along the arm's edge, which is often cranked.",
  note: lowerPositive,
};

const lineSkipped = "Skip it and the arm angle is used.";

const stopLean: ReadingGuide = {
  name: "Lean of the stop",
  how: "Between a plumb line and the line the stop is pressed along (A to B), from front or rear.",
  wrong: "The bracket may lean another way. Hold the gauge along the rubber.",
  note: "Top toward the pivot is positive; top away from it takes a minus. Upright: 0.",
  skipped: "Skip it and 0 is used.",
};

const leanOnBody: ReadingGuide = {
  ...stopLean,
  note: "Either way counts the same. Upright: 0.",
};

type GeometryGuides = { readonly [Name in GeometryReadingName]?: ReadingGuide };

const guides: { readonly [Kind in LayoutKind]: GeometryGuides } = {
  arm: {
    pivotToStop: {
      name: "Pivot to stop",
      how: "From the arm's pivot bolt, its centre (A), straight to where stop and pad meet (B).",
      wrong:
        "Not along the arm's edge, and not to the stop's mounting bolt: the straight line counts.",
    },
    pivotToOuter,
    armAngle,
    stopLineAngle: {
      name: "Angle of the line to the stop",
      how: "Only where B, where stop and pad meet, lies off the arm's own line: between a level line and the line from the pivot bolt (A) to B.",
      wrong: "Not the arm's own angle where the pad stands above or below the arm.",
      skipped: lineSkipped,
      note: lowerPositive,
    },
    stopLean,
  },
  damper: {
    pivotToMount: {
      name: "Pivot to damper mount",
      how: "From the arm's pivot bolt, its centre (A), straight to the centre of the damper's lower bolt (B).",
      wrong:
        "The lower bolt often sits beside the arm. Measure to the bolt, not to the arm under it.",
    },
    pivotToOuter,
    damperLength: {
      name: "Damper length, eye to eye",
      how: "From the centre of the lower bolt (A) to the centre of the upper one (B), as the vehicle stands. Upper end a stud: to the middle of its rubber.",
      wrong: "Measured at full droop or with a wheel off the ground it is too long.",
    },
    armAngle,
    mountLineAngle: {
      name: "Angle of the line to the damper mount",
      how: "Only where the damper's lower bolt (B) lies off the arm's own line: between a level line and the line from the pivot bolt (A) to B.",
      wrong: "Not the arm's own angle where the bolt stands above or below the arm.",
      skipped: lineSkipped,
      note: lowerPositive,
    },
    stopLean: {
      ...stopLean,
      name: "Lean of the damper",
      how: "Between a plumb line and the line of the damper's rod (A to B), seen from front or rear.",
      wrong: "The spring around it may sit crooked. Hold the gauge along the damper's body.",
    },
  },
  strut: {
    stopLean: {
      ...leanOnBody,
      name: "Lean of the strut",
      how: "Between a plumb line and the line of the strut's rod (A to B), seen from front or rear.",
      wrong: "Not the spring: it may sit at an angle of its own. Hold the gauge along the body.",
    },
  },
  axle: {
    track: {
      name: "Track",
      how: "From the middle of the left tyre's tread (A) to the middle of the right one (B), on the ground.",
      wrong: "Measured outside to outside it is one tyre's width too much.",
    },
    stopSpacing: {
      name: "Spacing of the stops",
      how: "From the middle of the left stop (A) to the middle of the right one (B), straight across.",
      wrong: "Frame rail to frame rail is not the same. Measure where the rubber meets its pad.",
    },
    stopLean: leanOnBody,
  },
};

const onTheRod: ReadingGuide = {
  name: "Gap",
  how: "Along the rod, from the stop's lower end (A) to the top of the damper's body (B).",
  wrong:
    "A dust boot hides the stop's end. Slide it up. With the wheel off the ground the gap is too long.",
  note: "Already touching? Type 0.1 mm, or 0.004 in.",
};

const toThePad: ReadingGuide = {
  name: "Gap",
  how: "Along the stop's own axis, from the tip of the rubber (A) to the pad that it lands on (B).",
  wrong:
    "Straight up is too short where the stop leans. With the wheel off the ground it is too long.",
  note: "Already touching? Type 0.1 mm, or 0.004 in.",
};

const rideHeight: ReadingGuide = {
  name: "Ride height",
  how: "To compare left with right: from the wheel centre (A) straight up to the edge of the wheel arch (B).",
  wrong: "A tilted floor makes one side short. Use the level place.",
  skipped: "It can be skipped.",
};

const cornerMass: ReadingGuide = {
  name: "Weight on this wheel",
  how: "Wheel scale under this tyre, the others on blocks of the same height, vehicle as it is used.",
  wrong: "With one wheel lifted by the scale alone the reading comes out too high.",
};

const freeHeight: ReadingGuide = {
  name: "Free height of the stop",
  how: "Height of the rubber alone with nothing pressing on it, from its seat (A) to its tip (B).",
  wrong: "The stud and the steel plate are not part of it.",
};

type LimitGuide = { readonly [At in "wheel" | "stop"]: ReadingGuide };

const limitGuides: { readonly [Kind in LimitKind]: LimitGuide } = {
  tyre: {
    wheel: {
      name: "Clearance over the tyre",
      how: "From the tyre's tread (A) straight up to the first thing that it would touch (B).",
      wrong: "Look again with the steering at full lock: the least clearance counts.",
    },
    stop: {
      name: "Clearance over the tyre, at the stop",
      how: "How much the gap at the stop will have closed when the tyre touches.",
      wrong: "Type the movement along the stop's axis, not the wheel's.",
    },
  },
  damper: {
    wheel: {
      name: "Damper travel left",
      how: "Bare rod from the top of the damper's body (A) to what ends its travel (B).",
      wrong:
        "A boot hides the end of the rod. If the rod closes slower than the wheel, say so below.",
    },
    stop: {
      name: "Damper travel left, at the stop",
      how: "How much the gap at the stop will have closed when the damper is at its end.",
      wrong: "Count from how it stands now, not from the tip of the stop.",
    },
  },
  spring: {
    wheel: {
      name: "Spring travel left",
      how: "The height now (B) less the height with all coils touching (A): add up the clear spaces between the coils.",
      wrong: "Coils that touch already no longer move: leave those spaces out.",
    },
    stop: {
      name: "Spring travel left, at the stop",
      how: "How much the gap at the stop will have closed when the coils touch.",
      wrong: "Coils that touch already no longer move: leave those spaces out.",
    },
  },
  metal: {
    wheel: {
      name: "Metal clearance",
      how: "From the part that moves (A) straight to the metal that it would hit first (B).",
      wrong: "Brake lines, wires and exhaust count as well. Look from the front and from behind.",
    },
    stop: {
      name: "Metal clearance, at the stop",
      how: "How much the gap at the stop will have closed when metal meets metal: often to the cup's rim.",
      wrong: "Count from how it stands now, not from the tip of the stop.",
    },
  },
  other: {
    wheel: {
      name: "Other clearance",
      how: "From the part that moves (A) straight to what it would touch first (B).",
      wrong: "Write down what it is in the notes, so that the next person finds it.",
    },
    stop: {
      name: "Other clearance, at the stop",
      how: "How much the gap at the stop will have closed when the two touch.",
      wrong: "Write down what it is in the notes, so that the next person finds it.",
    },
  },
};

/** How one reading is taken on this layout. */
export function readingGuide(
  id: ReadingId,
  kind: LayoutKind,
  limit?: { readonly kind: LimitKind; readonly at: "wheel" | "stop" },
): ReadingGuide {
  const name = id.replace(/^(left|right)\./, "");
  if (limit) return limitGuides[limit.kind][limit.at];
  if (name === "gap") return kind === "damper" || kind === "strut" ? onTheRod : toThePad;
  if (name === "rideHeight") return rideHeight;
  if (name === "cornerMassKg") return cornerMass;
  if (name === "stop.freeHeight") return freeHeight;
  return guides[kind][name as GeometryReadingName] ?? { name, how: "", wrong: "" };
}

export const limitNames: { readonly [Kind in LimitKind]: string } = {
  tyre: "Tyre on the arch",
  damper: "Damper at its end",
  spring: "Spring coils closed",
  metal: "Metal on metal",
  other: "Something else",
};

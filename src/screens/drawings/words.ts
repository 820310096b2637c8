import type { LayoutKind } from "../../physics/fitment.ts";
import type { PicturedReading } from "./drawnNumbers.ts";

/** What is measured, in words: a title, and the two ends; a and b stand in the picture, so ≤ 22 letters. */
export interface ReadingWords {
  readonly title: string;
  readonly a: string;
  readonly b: string;
  /** How the tape, gauge or scale is held. */
  readonly how: string;
}

const towardPivot: { readonly [Kind in LayoutKind]: string } = {
  arm: "top toward the pivot = +",
  damper: "top toward the pivot = +",
  strut: "top toward the middle = +",
  axle: "top toward the middle = +",
};

const limitNames: { readonly [reading: string]: string } = {
  "limit:tyre": "Clearance over the tyre",
  "limit:damper": "Damper travel left",
  "limit:spring": "Spring travel left",
  "limit:metal": "Metal to metal clearance",
  "limit:other": "Other clearance",
};

export function positiveWords(kind: LayoutKind, reading: PicturedReading): string {
  return reading === "stopLean" ? towardPivot[kind] : "outer end lower = +";
}

const stopMeets: { readonly [Kind in LayoutKind]: string } = {
  arm: "pad on the arm",
  damper: "top of damper body",
  strut: "top of strut body",
  axle: "pad on the axle",
};

const leanTitles: { readonly [Kind in LayoutKind]: string } = {
  arm: "Lean of the stop",
  damper: "Lean of the damper",
  strut: "Lean of the strut",
  axle: "Lean of the stop",
};

const stopEnds = { a: "where the stop lands", b: "along the stop" } as const;
const rodEnds = { a: "lower end", b: "upper end" } as const;
const leanEnds = { arm: stopEnds, damper: rodEnds, strut: rodEnds, axle: stopEnds } as const;

/** `atStop`: a limit given as what the gap at the stop closes by. */
export function readingWords(
  kind: LayoutKind,
  reading: PicturedReading,
  atStop = false,
): ReadingWords {
  if (atStop) {
    return {
      title: `${limitNames[reading] ?? "Limit"}, at the stop`,
      a: `${stopMeets[kind]}`,
      b: "the same, at contact",
      how: "How much the gap at the stop will have closed when the two parts touch.",
    };
  }
  const pivot = "pivot bolt, centre";
  switch (reading) {
    case "pivotToStop":
      return {
        title: "Pivot to stop",
        a: pivot,
        b: "where the stop lands",
        how: "Straight from the centre of the arm's pivot bolt to the middle of the patch that the stop lands on.",
      };
    case "pivotToOuter":
      return {
        title: "Pivot to outer joint",
        a: pivot,
        b: "outer joint, centre",
        how: "Straight from the centre of the arm's pivot bolt to the centre of its outer joint.",
      };
    case "pivotToMount":
      return {
        title: "Pivot to damper mount",
        a: pivot,
        b: "lower damper bolt",
        how: "Straight from the centre of the arm's pivot bolt to the centre of the damper's lower bolt.",
      };
    case "armAngle":
      return {
        title: "Arm angle",
        a: pivot,
        b: "outer joint, centre",
        how: "The angle between the level and the straight line from the pivot bolt to the outer joint.",
      };
    case "stopLineAngle":
      return {
        title: "Angle of the line from pivot to stop",
        a: pivot,
        b: "where the stop lands",
        how: "The angle between the level and the straight line from the pivot bolt to the patch that the stop lands on.",
      };
    case "mountLineAngle":
      return {
        title: "Angle of the line from pivot to damper mount",
        a: pivot,
        b: "lower damper bolt",
        how: "The angle between the level and the straight line from the pivot bolt to the damper's lower bolt.",
      };
    case "stopLean":
      return {
        title: leanTitles[kind],
        ...leanEnds[kind],
        how: "The angle between a plumb line and the line along which the stop is pressed.",
      };
    case "damperLength":
      return {
        title: "Damper length",
        a: "lower bolt, centre",
        b: "upper bolt, centre",
        how: "From the centre of the lower bolt to the centre of the upper bolt, with the vehicle on its wheels.",
      };
    case "track":
      return {
        title: "Track",
        a: "middle, left tyre",
        b: "middle, right tyre",
        how: "From the middle of one tyre's tread to the middle of the other's, at the ground.",
      };
    case "stopSpacing":
      return {
        title: "Spacing of the stops",
        a: "middle, left stop",
        b: "middle, right stop",
        how: "From the middle of one stop to the middle of the other, across the vehicle.",
      };
    case "gap":
      return {
        title: "Gap",
        a: "end of the stop",
        b: stopMeets[kind],
        how: "Along the line of the stop, from its free end to what it will meet.",
      };
    case "rideHeight":
      return {
        title: "Ride height",
        a: "centre of the wheel",
        b: "lip of the arch",
        how: "Straight up from the centre of the wheel to the lip of the wheel arch.",
      };
    case "cornerMass":
      return {
        title: "Mass on this wheel",
        a: "",
        b: "",
        how: "The scale under this wheel, the other three wheels at the same level.",
      };
    case "freeHeight":
      return {
        title: "Free height of the stop",
        a: "base of the stop",
        b: "tip of the stop",
        how: "The stop unloaded, from its base without the bolt to its tip.",
      };
    case "usableCompression":
      return {
        title: "Usable compression",
        a: "tip, pressed",
        b: "tip, free",
        how: "How far the stop can be pressed before it is solid: free height less the height at full compression.",
      };
    default:
      return limitWords(kind, reading);
  }
}

function limitWords(kind: LayoutKind, reading: `limit:${string}`): ReadingWords {
  switch (reading) {
    case "limit:tyre":
      return {
        title: "Clearance over the tyre",
        a: "top of the tyre",
        b: "what it would touch",
        how: "Straight up from the tyre to the first thing it would touch, steered or straight.",
      };
    case "limit:damper":
      return {
        title: "Damper travel left",
        a: "top of the body",
        b: "where the rod ends",
        how: "The rod that is still outside the damper's body, up to what ends its travel.",
      };
    case "limit:spring":
      return {
        title: "Spring travel left",
        a: "coils touching",
        b: "as it stands",
        how: "The gaps between the coils added up: the height now less the height with all coils touching.",
      };
    case "limit:metal":
      return {
        title: "Metal to metal clearance",
        a: kind === "axle" ? "top of the axle" : "top of the arm",
        b: "frame above it",
        how: "From the part that moves up with the wheel to the metal it would hit.",
      };
    default:
      return {
        title: "Other clearance",
        a: "the moving part",
        b: "what it would touch",
        how: "From any other part that moves up with the wheel to what it would touch first.",
      };
  }
}

import { cornerLayout } from "../../budget/cornerLayout.ts";
import type { Corner, Fitment } from "../../fitment.ts";
import type { LayoutPlan } from "../../kinematics/layoutPlan.ts";
import {
  type ArmPointWorking,
  asinDegrees,
  degrees,
  type FormulaStep,
  type LayoutWorking,
  mm,
  quantity,
  sinDegrees,
  type Working,
} from "../workedFigure.ts";
import {
  armContact,
  type ContactWorking,
  damperContact,
  triangleContact,
} from "./contactWorking.ts";
import { MeasuredTerms } from "./measuredTerms.ts";
import {
  type MeasuredArm,
  measuredArm,
  type PathWorking,
  ratioOrigin,
  swingPath,
} from "./pathWorking.ts";
import { straightWorking } from "./straightWorking.ts";
import { strutPath, strutTerms } from "./strutWorking.ts";
import { fourBarPath, instantCentrePath } from "./twoArmsWorking.ts";

/** How this corner's layout turns stop closing into wheel travel and back; undefined: it has no motion. */
export function layoutWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const layout = cornerLayout(fitment, corner);
  if (!layout.ok) return undefined;
  const plan = layout.value;
  if (plan.motion.set(Float64Array.from(plan.places, ({ drawn }) => drawn.mean)) !== null) {
    return undefined;
  }
  const terms = new MeasuredTerms(plan);
  switch (plan.linkage) {
    case "straight":
      return straightWorking(
        terms,
        "The stop closes along its own leaning axis as the wheel rises.",
      );
    case "axle":
      return straightWorking(
        terms,
        "The axle rises level, both wheels together; the stop closes along its axis.",
      );
    case "strutArm": {
      const strut = strutTerms(terms);
      const path = strutPath(terms, strut);
      const contact = triangleContact(
        strut.arm.length,
        strut.arm.angle,
        strut.jointToTop,
        strut.topLean,
        strut.aside,
      );
      return turningWorking(plan, terms, contact, path, null);
    }
    default: {
      const arm = measuredArm(terms, fitment.layout.armRole);
      const contact =
        fitment.layout.kind === "arm"
          ? armContact(terms, arm.angle, fitment.layout.stopOn)
          : damperContact(terms, arm.angle);
      return turningWorking(plan, terms, contact, pathOf(fitment, plan, terms, arm), arm);
    }
  }
}

function pathOf(
  fitment: Fitment,
  plan: LayoutPlan,
  terms: MeasuredTerms,
  arm: MeasuredArm,
): PathWorking {
  if (plan.linkage === "fourBar") {
    return fourBarPath(terms, arm, fitment.layout.armRole === "upper");
  }
  if (plan.linkage === "instantCentre") return instantCentrePath(terms, arm);
  const drawn = plan.places.find(({ name }) => name === "wheelPerOuter")?.drawn.mean;
  const ratio = drawn ?? 1;
  terms.symbols.push({
    symbol: "κ",
    meaning: "wheel travel per travel of the outer joint",
    value: quantity("count", ratio),
    origin: ratioOrigin(plan.linkage),
  });
  return swingPath(arm, ratio, []);
}

const sources = {
  fourBar: "Planar four-bar linkage of both arms and the wheel carrier; R = dz/ds.",
  instantCentre: "The wheel carrier turns about the point where both arms' lines meet; R = dz/ds.",
  strutArm: "Triangle of the arm's pivot, the lower joint and the strut's top mount; R = dz/ds.",
} as const;

function sourceOf({ linkage }: LayoutPlan): string {
  return linkage === "fourBar" || linkage === "instantCentre" || linkage === "strutArm"
    ? sources[linkage]
    : "Geometry of an arm about a fixed axis; R = dz/ds.";
}

/** Stop and wheel move with one turn α of an arm. */
function turningWorking(
  plan: LayoutPlan,
  terms: MeasuredTerms,
  contact: ContactWorking,
  path: PathWorking,
  arm: MeasuredArm | null,
): LayoutWorking {
  const before: readonly FormulaStep[] = [...terms.steps, ...path.before, ...contact.before];
  const travelOf = (turn: Working): Working => {
    const travel = path.travel(turn.value);
    return { value: travel.value, steps: [...before, ...turn.steps, ...travel.steps] };
  };
  return {
    source: sourceOf(plan),
    symbols: terms.symbols,
    ratio() {
      const closing = contact.slope();
      const travel = path.slope();
      const value = travel.value / closing.value;
      return {
        value,
        steps: [
          ...before,
          ...closing.steps,
          ...travel.steps,
          {
            formula: "R = (dz/dα)/(ds/dα)",
            worked: [mm(travel.value), " / ", mm(closing.value)],
            result: quantity("ratio", value),
          },
        ],
      };
    },
    wheelTravel: (closing, letter) => travelOf(contact.turn(closing, letter)),
    closing(travel, letter) {
      const direct = path.turn(travel, letter);
      const turn = direct ?? foundTurn(plan, contact, path, travel, letter);
      const closing = contact.closing(turn.value);
      return { value: closing.value, steps: [...before, ...turn.steps, ...closing.steps] };
    },
    ...(arm !== null && { armPoint: armPointWorking(arm, travelOf) }),
  };
}

/** α of a wheel travel that is found by search, and the wheel travel at it, which shows that it is the one. */
function foundTurn(
  plan: LayoutPlan,
  contact: ContactWorking,
  path: PathWorking,
  travel: number,
  letter: string,
): Working {
  const turn = contact.turn(plan.motion.closing(travel), "s").value;
  const reached = path.travel(turn);
  return {
    value: turn,
    steps: [
      {
        formula: `α at which z is ${letter}, found by search; the lines below show it`,
        worked: [degrees(turn)],
        result: degrees(turn),
      },
      ...reached.steps,
    ],
  };
}

function armPointWorking(
  { angle }: MeasuredArm,
  travelOf: (turn: Working) => Working,
): ArmPointWorking {
  return (distance, clearance, letters) => {
    const value = angle - asinDegrees(sinDegrees(angle) - clearance / distance);
    return travelOf({
      value,
      steps: [
        {
          formula: `α = θ0 − asin(sin θ0 − ${letters.clearance}/${letters.distance})`,
          worked: [
            degrees(angle),
            " − asin[sin ",
            degrees(angle),
            " − ",
            mm(clearance),
            " / ",
            mm(distance),
            "]",
          ],
          result: degrees(value),
        },
      ],
    });
  };
}

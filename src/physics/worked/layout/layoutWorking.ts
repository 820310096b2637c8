import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import { cornerLayout } from "../../budget/cornerLayout.ts";
import type { Corner, Fitment } from "../../fitment.ts";
import type { LayoutPlan } from "../../kinematics/layoutPlan.ts";
import { linkages } from "../../kinematics/linkages.ts";
import { TriangleContact } from "../../motion/contact/triangleContact.ts";
import { FourBarPath } from "../../motion/path/fourBarPath.ts";
import { StrutPath } from "../../motion/path/strutPath.ts";
import { SwingPath } from "../../motion/path/swingPath.ts";
import { Turn } from "../../motion/turn.ts";
import { TurningMotion, turningFormulas } from "../../motion/turningMotion.ts";
import { InstantCentreRatio } from "../../motion/wheelRatio.ts";
import type { Words } from "../../sentence.ts";
import { type FormulaStep, step } from "../step.ts";
import {
  type ArmPointWorking,
  degrees,
  degreesOf,
  type LayoutWorking,
  mm,
  quantity,
  ratioOf,
  type Working,
} from "../workedFigure.ts";
import { type ContactWorking, contactWorking } from "./contactWorking.ts";
import { MeasuredTerms } from "./measuredTerms.ts";
import {
  type MeasuredArm,
  measuredArm,
  type PathWorking,
  ratioOrigin,
  swingWorking,
} from "./pathWorking.ts";
import { straightWorking } from "./straightWorking.ts";
import { strutWorking } from "./strutWorking.ts";
import { fourBarWorking, instantCentreWorking } from "./twoArmsWorking.ts";

/** How this corner's layout turns stop closing into wheel travel and back; undefined: it has no motion. */
export function layoutWorking(fitment: Fitment, corner: Corner): LayoutWorking | undefined {
  const layout = cornerLayout(fitment, corner);
  if (!layout.ok) return undefined;
  const plan = layout.value;
  if (plan.motion.set(Float64Array.from(plan.places, ({ drawn }) => drawn.mean)) !== null) {
    return undefined;
  }
  const terms = new MeasuredTerms(plan);
  const { motion } = plan;
  if (!(motion instanceof TurningMotion)) {
    return straightWorking(terms, motion, linkages[plan.linkage].source);
  }
  if (motion.path instanceof StrutPath) {
    if (!(motion.contact instanceof TriangleContact)) return undefined;
    const { contact, path } = strutWorking(terms, motion.contact, motion.path);
    return turningWorking(plan, motion, terms, contact, path, null);
  }
  const arm = measuredArm(terms, fitment.layout.armRole);
  const contact = contactWorking(motion.contact, terms, arm.angle);
  const path = armPath(plan, motion, terms, arm);
  return contact && path && turningWorking(plan, motion, terms, contact, path, arm);
}

function armPath(
  { linkage }: LayoutPlan,
  { path }: TurningMotion,
  terms: MeasuredTerms,
  arm: MeasuredArm,
): PathWorking | undefined {
  if (path instanceof FourBarPath) return fourBarWorking(terms, arm, path);
  if (!(path instanceof SwingPath)) return undefined;
  const { ratio } = path;
  if (ratio instanceof InstantCentreRatio) return instantCentreWorking(terms, arm, path, ratio);
  terms.symbols.push({
    symbol: "κ",
    meaning: messages.wheelTravelPerTravel,
    value: quantity("count", ratio.value),
    origin: ratioOrigin(linkage),
  });
  return swingWorking(path, arm, []);
}

/** Stop and wheel move with one turn α of an arm. */
function turningWorking(
  plan: LayoutPlan,
  motion: TurningMotion,
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
    source: linkages[plan.linkage].source,
    symbols: terms.symbols,
    motion,
    led: motion,
    ratio() {
      const closing = contact.slope();
      const travel = path.slope();
      const ratio = ratioOf(motion);
      const letters = { "(dz/dα)": mm(travel.value), "(ds/dα)": mm(closing.value) };
      return {
        value: ratio.value,
        steps: [
          ...before,
          ...closing.steps,
          ...travel.steps,
          step(turningFormulas.ratio, letters, ratio),
        ],
      };
    },
    wheelTravel: (closing, letter) => travelOf(contact.turn(closing, letter)),
    closing(travel, letter) {
      const direct = path.turn(travel, letter);
      const turn = direct ?? foundTurn(motion, contact, path, travel, letter);
      const closing = contact.closing(turn.value);
      return { value: closing.value, steps: [...before, ...turn.steps, ...closing.steps] };
    },
    ...(arm !== null && { armPoint: armPointWorking(motion, arm, travelOf) }),
  };
}

/** α of a wheel travel that is found by search, and the wheel travel at it, which shows that it is the one. */
function foundTurn(
  motion: TurningMotion,
  contact: ContactWorking,
  path: PathWorking,
  travel: number,
  letter: Words,
): Working {
  const turn = contact.turn(motion.closing(travel), "s").value;
  const letters = { α: degrees(turn), z_asked: { letter } };
  return {
    value: turn,
    steps: [step(turningFormulas.found, letters, degrees(turn)), ...path.travel(turn).steps],
  };
}

function armPointWorking(
  motion: TurningMotion,
  arm: MeasuredArm,
  travelOf: (turn: Working) => Working,
): ArmPointWorking {
  return (distance, clearance, letters) => {
    const turn = new Turn();
    const isReached = motion.turnForArmPoint(distance, clearance, turn);
    const value = isReached ? degreesOf(turn) : Number.NaN;
    const terms = {
      θ0: degrees(arm.angle),
      c: { letter: letters.clearance, value: mm(clearance) },
      d: { letter: letters.distance, value: mm(distance) },
    };
    return travelOf({
      value,
      steps: [step(turningFormulas.armPoint, terms, degrees(value))],
    });
  };
}

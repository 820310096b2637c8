import * as termNames from "../../../words/compiled/physics/terms.ts";
import * as messages from "../../../words/compiled/physics/worked/layout.ts";
import { type FourBarPath, fourBarFormulas } from "../../motion/path/fourBarPath.ts";
import { lowerDrivenFormulas } from "../../motion/path/lowerDrivenPath.ts";
import type { SwingPath } from "../../motion/path/swingPath.ts";
import { upperDrivenFormulas } from "../../motion/path/upperDrivenPath.ts";
import {
  carrierTurn,
  type InstantCentreRatio,
  instantCentreFormulas,
} from "../../motion/wheelRatio.ts";
import { type FormulaStep, step } from "../step.ts";
import { degrees, degreesIn, inDegrees, mm, quantity } from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";
import {
  carrierWorking,
  type MeasuredArm,
  type PathWorking,
  slopeWorking,
  swingWorking,
} from "./pathWorking.ts";

/** Where the other arm, the joints and the tire stand. */
function jointsOf(terms: MeasuredTerms) {
  return {
    otherAngle: terms.angle("otherArmAngle", "θo", messages.otherArmBelowHorizontal),
    h: mm(terms.length("jointHeight", "h", messages.upperJointAboveLower)),
    k: mm(terms.length("jointInset", "k", messages.upperJointInboardOf)),
    e: mm(terms.length("tyreOffset", "e", messages.lowerJointOutTo)),
  };
}

/** κ from where both arms' lines meet: the wheel carrier turns about that point. */
export function instantCentreWorking(
  terms: MeasuredTerms,
  arm: MeasuredArm,
  path: SwingPath,
  ratio: InstantCentreRatio,
): PathWorking {
  const { otherAngle, ...joints } = jointsOf(terms);
  const letters = { ...joints, θl: degrees(arm.angle), θu: degrees(otherAngle) };
  const τ = quantity("count", ratio.turn);
  return swingWorking(path, arm, [
    step(instantCentreFormulas.turn, letters, τ),
    step(instantCentreFormulas.ratio, { ...letters, τ }, quantity("count", ratio.value)),
  ]);
}

/**
 * Both arms and the wheel carrier between them as a planar four-bar linkage, front view; the driven joint by
 * the law of cosines, on the side on which it stands at ride.
 */
export function fourBarWorking(
  terms: MeasuredTerms,
  arm: MeasuredArm,
  path: FourBarPath,
): PathWorking {
  const { otherAngle, ...joints } = jointsOf(terms);
  const c = mm(terms.length("otherArmLength", "c", messages.lengthOfOtherArm));
  const above = terms.length("wheelCentreAbove", "v", messages.wheelCenterAboveLower);
  const isUpper = path.direction < 0;
  const formulas = isUpper ? upperDrivenFormulas : lowerDrivenFormulas;
  const given = {
    ...joints,
    c,
    b: mm(arm.length),
    θ0: degrees(arm.angle),
    θo: degrees(otherAngle),
    θl: degrees(isUpper ? otherAngle : arm.angle),
    θu: degrees(isUpper ? arm.angle : otherAngle),
  };
  const atRide = path.stand;
  const ℓ = mm(atRide.link);
  const slope = () => {
    const τ = quantity("count", carrierTurn(path.joints, path.lower.line, path.upper.line));
    const whole = slopeWorking(path, formulas.slope, { ...given, τ });
    return {
      value: whole.value,
      steps: [step(instantCentreFormulas.turn, given, τ), ...whole.steps],
    };
  };
  const before: readonly FormulaStep[] = [
    step(fourBarFormulas.link, given, ℓ),
    step(formulas.across, given, mm(atRide.pivotAcross)),
    step(formulas.up, given, mm(atRide.pivotUp)),
  ];
  return carrierWorking(path, before, slope, { out: joints.e.value, above }, (turn) => {
    const stand = path.stand;
    const δ = inDegrees(stand.carrier);
    const D = mm(stand.distance);
    const places = { across: mm(stand.across), up: mm(stand.up) };
    const jointRise = mm(stand.jointRise);
    return {
      lowerRise: stand.lowerRise,
      carrier: degreesIn(stand.carrier),
      steps: [
        step(formulas.jointRise, { ...given, α: degrees(turn) }, jointRise),
        step(formulas.distance, places, D),
        step(
          fourBarFormulas.carrier[stand.side],
          {
            ...given,
            ℓ,
            D,
            directionOfQ: { name: termNames.directionOfQ, value: messages.atan22(places) },
            itsDirectionAtRide: {
              name: termNames.itsDirectionAtRide,
              value: inDegrees(stand.carrierAtRide),
            },
          },
          δ,
        ),
        ...(isUpper
          ? [
              step(
                upperDrivenFormulas.lowerRise,
                { ...given, "U up": jointRise, δ },
                mm(stand.lowerRise),
              ),
            ]
          : []),
      ],
    };
  });
}

import {
  acosDegrees,
  atan2Degrees,
  cosDegrees,
  degrees,
  type FormulaStep,
  mm,
  quantity,
  sinDegrees,
  tanDegrees,
  type Working,
} from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";
import { type MeasuredArm, type PathWorking, swingPath, wheelStep } from "./pathWorking.ts";

/** Angle of the other arm, and where joints and tire stand to each other. */
interface Joints {
  readonly otherAngle: number;
  readonly height: number;
  readonly inset: number;
  readonly tyre: number;
}

function jointsOf(terms: MeasuredTerms): Joints {
  return {
    otherAngle: terms.angle("otherArmAngle", "θo", "other arm below the horizontal"),
    height: terms.length("jointHeight", "h", "upper joint above the lower"),
    inset: terms.length("jointInset", "k", "upper joint inboard of the lower"),
    tyre: terms.length("tyreOffset", "e", "lower joint out to the middle of the tire"),
  };
}

/** τ, the carrier's turn per rise of the lower joint at ride, 1/mm. */
function carrierTurn(lower: number, upper: number, { height, inset }: Joints): Working {
  const value = (tanDegrees(lower) - tanDegrees(upper)) / (height - inset * tanDegrees(upper));
  return {
    value,
    steps: [
      {
        formula: "τ = (tan θl − tan θu)/(h − k·tan θu), per mm",
        worked: [
          "(tan ",
          degrees(lower),
          " − tan ",
          degrees(upper),
          ") / (",
          mm(height),
          " − ",
          mm(inset),
          " · tan ",
          degrees(upper),
          ")",
        ],
        result: quantity("count", value),
      },
    ],
  };
}

/** κ from where both arms' lines meet: the wheel carrier turns about that point. */
export function instantCentrePath(terms: MeasuredTerms, arm: MeasuredArm): PathWorking {
  const joints = jointsOf(terms);
  const turn = carrierTurn(arm.angle, joints.otherAngle, joints);
  const ratio = 1 + joints.tyre * turn.value;
  return swingPath(arm, ratio, [
    ...turn.steps,
    {
      formula: "κ = 1 + e·τ",
      worked: ["1 + ", mm(joints.tyre), " · ", quantity("count", turn.value)],
      result: quantity("count", ratio),
    },
  ]);
}

/**
 * Both arms and the wheel carrier between them as a planar four-bar linkage, front view; the driven joint by
 * the law of cosines, on the side on which it stands at ride.
 */
export function fourBarPath(
  terms: MeasuredTerms,
  arm: MeasuredArm,
  upperDrives: boolean,
): PathWorking {
  const joints = jointsOf(terms);
  const otherLength = terms.length("otherArmLength", "c", "length of the other arm");
  const above = terms.length("wheelCentreAbove", "v", "wheel center above the lower joint");
  const { height, inset, tyre } = joints;
  const lowerAngle = upperDrives ? joints.otherAngle : arm.angle;
  const upperAngle = upperDrives ? arm.angle : joints.otherAngle;
  const link = Math.hypot(height, inset);
  // From the driving joint: the carrier's other end at ride, and the driven arm's pivot.
  const carrierY = upperDrives ? inset : -inset;
  const carrierZ = upperDrives ? -height : height;
  const jointY = arm.length * cosDegrees(arm.angle);
  const jointZ = -arm.length * sinDegrees(arm.angle);
  const farY = jointY + carrierY - otherLength * cosDegrees(joints.otherAngle);
  const farZ = jointZ + carrierZ + otherLength * sinDegrees(joints.otherAngle);
  const side = Math.sign(carrierY * (farZ - jointZ) - carrierZ * (farY - jointY)) < 0 ? -1 : 1;
  const atRide = atan2Degrees(carrierZ, carrierY);
  const turning = carrierTurn(lowerAngle, upperAngle, joints);
  const names = upperDrives
    ? { driving: "U", driven: "L", moved: "from the upper pivot" }
    : { driving: "L", driven: "U", moved: "from the lower pivot" };
  const before: readonly FormulaStep[] = [
    {
      formula: "ℓ = √(h² + k²)",
      worked: ["√[(", mm(height), ")² + (", mm(inset), ")²]"],
      result: mm(link),
    },
    {
      formula: `Q across, the other arm's pivot ${names.moved}`,
      worked: [
        mm(arm.length),
        " · cos ",
        degrees(arm.angle),
        " + ",
        mm(carrierY),
        " − ",
        mm(otherLength),
        " · cos ",
        degrees(joints.otherAngle),
      ],
      result: mm(farY),
    },
    {
      formula: "Q up",
      worked: [
        "−",
        mm(arm.length),
        " · sin ",
        degrees(arm.angle),
        " + ",
        mm(carrierZ),
        " + ",
        mm(otherLength),
        " · sin ",
        degrees(joints.otherAngle),
      ],
      result: mm(farZ),
    },
  ];
  return {
    before,
    slope() {
      const lever = 1 + tyre * turning.value;
      const divisor = upperDrives ? 1 - inset * turning.value : 1;
      const value = (arm.length * cosDegrees(arm.angle) * lever) / divisor;
      return {
        value,
        steps: [
          ...turning.steps,
          {
            formula: upperDrives
              ? "dz/dα = b·cos θ0·(1 + e·τ)/(1 − k·τ), per radian"
              : "dz/dα = b·cos θ0·(1 + e·τ), per radian",
            worked: [
              mm(arm.length),
              " · cos ",
              degrees(arm.angle),
              " · (1 + ",
              mm(tyre),
              " · ",
              quantity("count", turning.value),
              ")",
              ...(upperDrives
                ? [" / (1 − ", mm(inset), " · ", quantity("count", turning.value), ")"]
                : []),
            ],
            result: mm(value),
          },
        ],
      };
    },
    travel(turn) {
      const y = arm.length * cosDegrees(arm.angle - turn);
      const z = -arm.length * sinDegrees(arm.angle - turn);
      const across = farY - y;
      const up = farZ - z;
      const far = Math.hypot(across, up);
      const share = (far * far + link * link - otherLength * otherLength) / (2 * far * link);
      const raw = atan2Degrees(up, across) - side * acosDegrees(share) - atRide;
      const delta = raw - 360 * Math.round(raw / 360);
      const risen = z - jointZ;
      const joint = upperDrives
        ? risen + inset * sinDegrees(delta) - height * (cosDegrees(delta) - 1)
        : risen;
      const value = joint + tyre * sinDegrees(delta) + above * (cosDegrees(delta) - 1);
      return {
        value,
        steps: [
          {
            formula: `${names.driving} up: how far the measured arm's joint has risen`,
            worked: [
              mm(arm.length),
              " · [sin ",
              degrees(arm.angle),
              " − sin ",
              degrees(arm.angle - turn),
              "]",
            ],
            result: mm(risen),
          },
          {
            formula: `D = |Q − ${names.driving}|`,
            worked: ["√[(", mm(across), ")² + (", mm(up), ")²]"],
            result: mm(far),
          },
          {
            formula: `δ, the wheel carrier's turn: direction of Q ${side > 0 ? "−" : "+"} acos[(D² + ℓ² − c²)/(2·D·ℓ)] − its direction at ride`,
            worked: [
              "atan2(",
              mm(up),
              "; ",
              mm(across),
              side > 0 ? ") − acos[((" : ") + acos[((",
              mm(far),
              ")² + (",
              mm(link),
              ")² − (",
              mm(otherLength),
              ")²) / (2 · ",
              mm(far),
              " · ",
              mm(link),
              ")] − ",
              degrees(atRide + (raw - delta)),
            ],
            result: degrees(delta),
          },
          ...(upperDrives
            ? [
                {
                  formula: "L up = U up + k·sin δ − h·(cos δ − 1)",
                  worked: [
                    mm(risen),
                    " + ",
                    mm(inset),
                    " · sin ",
                    degrees(delta),
                    " − ",
                    mm(height),
                    " · (cos ",
                    degrees(delta),
                    " − 1)",
                  ],
                  result: mm(joint),
                } satisfies FormulaStep,
              ]
            : []),
          wheelStep(joint, tyre, above, delta, value),
        ],
      };
    },
    turn: () => null,
  };
}

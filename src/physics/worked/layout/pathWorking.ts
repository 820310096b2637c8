import type { ArmRole, Linkage } from "../../fitment.ts";
import {
  acosDegrees,
  asinDegrees,
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

/** How the wheel rises as an arm turns by α, and back; z in mm, α in degrees. */
export interface PathWorking {
  readonly before: readonly FormulaStep[];
  /** dz/dα at ride, mm per radian. */
  slope(): Working;
  travel(turn: number): Working;
  /** α for a wheel travel; null where it is only found by search. */
  turn(travel: number, letter: string): Working | null;
}

/** b and θ0 of the arm that carries the stop. */
export interface MeasuredArm {
  readonly length: number;
  readonly angle: number;
}

export function measuredArm(terms: MeasuredTerms, armRole: ArmRole | undefined): MeasuredArm {
  const end = armRole === "carriesWheel" ? "wheel center" : "outer joint";
  return {
    length: terms.length("pivotToOuter", "b", `pivot line to the ${end}`),
    angle: terms.angle("armAngle", "θ0", "arm below the horizontal"),
  };
}

/** z = κ·b·[sin θ0 − sin(θ0 − α)]: the wheel rises in proportion to the outer joint. */
export function swingPath(
  arm: MeasuredArm,
  ratio: number,
  before: readonly FormulaStep[],
): PathWorking {
  const { length: b, angle } = arm;
  return {
    before,
    slope() {
      const value = ratio * b * cosDegrees(angle);
      return {
        value,
        steps: [
          {
            formula: "dz/dα = κ·b·cos θ0, per radian",
            worked: [quantity("count", ratio), " · ", mm(b), " · cos ", degrees(angle)],
            result: mm(value),
          },
        ],
      };
    },
    travel(turn) {
      const value = ratio * b * (sinDegrees(angle) - sinDegrees(angle - turn));
      return {
        value,
        steps: [
          {
            formula: "z = κ·b·[sin θ0 − sin(θ0 − α)]",
            worked: [
              quantity("count", ratio),
              " · ",
              mm(b),
              " · [sin ",
              degrees(angle),
              " − sin ",
              degrees(angle - turn),
              "]",
            ],
            result: mm(value),
          },
        ],
      };
    },
    turn(travel, letter) {
      const value = angle - asinDegrees(sinDegrees(angle) - travel / (ratio * b));
      return {
        value,
        steps: [
          {
            formula: `α = θ0 − asin[sin θ0 − ${letter}/(κ·b)]`,
            worked: [
              degrees(angle),
              " − asin[sin ",
              degrees(angle),
              " − ",
              mm(travel),
              " / (",
              quantity("count", ratio),
              " · ",
              mm(b),
              ")]",
            ],
            result: degrees(value),
          },
        ],
      };
    },
  };
}

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

/** Where κ came from, of a swing without a linkage. */
export function ratioOrigin(linkage: Linkage): string {
  if (linkage === "carriesWheel") return "the arm carries the wheel itself";
  return linkage === "typed" ? "from the check" : "usual for such arms, not measured";
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

function wheelStep(
  joint: number,
  tyre: number,
  above: number,
  delta: number,
  value: number,
): FormulaStep {
  return {
    formula: "z = L up + e·sin δ + v·(cos δ − 1)",
    worked: [
      mm(joint),
      " + ",
      mm(tyre),
      " · sin ",
      degrees(delta),
      " + ",
      mm(above),
      " · (cos ",
      degrees(delta),
      " − 1)",
    ],
    result: mm(value),
  };
}

/** What the strut and the arm below it are, for both contact and path. */
export interface StrutTerms {
  readonly arm: MeasuredArm;
  readonly jointToTop: number;
  readonly topLean: number;
  readonly lean: number;
  /** p, how far the strut's axis passes the lower joint, mm. */
  readonly aside: number;
}

export function strutTerms(terms: MeasuredTerms): StrutTerms {
  const arm = {
    length: terms.length("lowerArmLength", "a", "length of the lower arm"),
    angle: terms.angle("lowerArmAngle", "φ0", "lower arm below the horizontal"),
  };
  const lean = terms.angle("stopLean", "βs", "lean of the strut, top toward the middle");
  const jointToTop = terms.length("jointToTop", "L0", "lower joint to the top mount");
  const topLean = terms.angle("jointToTopLean", "β", "lean of that line", lean);
  return { arm, jointToTop, topLean, lean, aside: jointToTop * sinDegrees(lean - topLean) };
}

/** The wheel carrier turns with the strut's axis, which passes the lower joint at p. */
export function strutPath(terms: MeasuredTerms, strut: StrutTerms): PathWorking {
  const { arm, jointToTop, topLean, lean, aside } = strut;
  const tyre = terms.length("tyreOffset", "e", "lower joint out to the middle of the tire");
  const above = terms.length("wheelCentreAbove", "v", "wheel center above the lower joint");
  const jointY = arm.length * cosDegrees(arm.angle);
  const jointZ = -arm.length * sinDegrees(arm.angle);
  const topY = jointY - jointToTop * sinDegrees(topLean);
  const topZ = jointZ + jointToTop * cosDegrees(topLean);
  const straight = Math.sqrt(jointToTop * jointToTop - aside * aside);
  const before: readonly FormulaStep[] = [
    {
      formula: "p = L0·sin(βs − β), the strut's axis beside the joint",
      worked: [mm(jointToTop), " · sin(", degrees(lean), " − ", degrees(topLean), ")"],
      result: mm(aside),
    },
  ];
  return {
    before,
    slope() {
      const cross = jointY * (topZ - jointZ) - jointZ * (topY - jointY);
      const dot = jointY * (topY - jointY) + jointZ * (topZ - jointZ);
      const turning = ((aside * cross) / straight - dot) / (jointToTop * jointToTop);
      const value = jointY + tyre * turning;
      return {
        value,
        steps: [
          {
            formula:
              "dδ/dα = (p·X/√(L0² − p²) − W)/L0², X and W the arm across and along the line to the top",
            worked: [
              "(",
              mm(aside),
              " · ",
              mm(cross),
              " / √[(",
              mm(jointToTop),
              ")² − (",
              mm(aside),
              ")²] − ",
              mm(dot),
              ") / (",
              mm(jointToTop),
              ")²",
            ],
            result: quantity("count", turning),
          },
          {
            formula: "dz/dα = a·cos φ0 + e·dδ/dα, per radian",
            worked: [
              mm(arm.length),
              " · cos ",
              degrees(arm.angle),
              " + ",
              mm(tyre),
              " · ",
              quantity("count", turning),
            ],
            result: mm(value),
          },
        ],
      };
    },
    travel(turn) {
      const y = arm.length * cosDegrees(arm.angle - turn);
      const z = -arm.length * sinDegrees(arm.angle - turn);
      const across = topY - y;
      const up = topZ - z;
      const far = Math.hypot(across, up);
      const delta = atan2Degrees(-across, up) + asinDegrees(aside / far) - lean;
      const risen = z - jointZ;
      const value = risen + tyre * sinDegrees(delta) + above * (cosDegrees(delta) - 1);
      return {
        value,
        steps: [
          {
            formula: "L up: how far the lower joint has risen",
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
            formula: "δ, the wheel carrier's turn: lean of the line to the top + asin(p/D) − βs",
            worked: [
              "atan2(",
              mm(-across),
              "; ",
              mm(up),
              ") + asin[",
              mm(aside),
              " / ",
              mm(far),
              "] − ",
              degrees(lean),
            ],
            result: degrees(delta),
          },
          wheelStep(risen, tyre, above, delta, value),
        ],
      };
    },
    turn: () => null,
  };
}

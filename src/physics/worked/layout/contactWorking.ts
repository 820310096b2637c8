import {
  acosDegrees,
  asinDegrees,
  atan2Degrees,
  cosDegrees,
  degrees,
  type FormulaStep,
  mm,
  sinDegrees,
  type Working,
} from "../workedFigure.ts";
import type { MeasuredTerms } from "./measuredTerms.ts";

/** How the stop closes as its arm turns by α, and back; s in mm, α in degrees. */
export interface ContactWorking {
  /** Steps that do not depend on how far it has turned. */
  readonly before: readonly FormulaStep[];
  /** ds/dα at ride, mm per radian. */
  slope(): Working;
  turn(closing: number, letter: string): Working;
  closing(turn: number): Working;
}

/** What the stop of an arm meets: round, a flat pad that turns, or a flat pad on the frame. */
export function armContact(
  terms: MeasuredTerms,
  armAngle: number,
  stopOn: "frame" | "arm" | undefined,
): ContactWorking {
  const a = terms.length("pivotToStop", "a", "pivot line to the contact patch");
  const phi = terms.angle(
    "stopLineAngle",
    "φ0",
    "line to the contact patch below the horizontal",
    armAngle,
  );
  const beta = terms.angle("stopLean", "β", "lean of the stop, top toward the pivot");
  const line = phi + beta;
  const before: readonly FormulaStep[] = [
    { formula: "w = φ0 + β", worked: [degrees(phi), " + ", degrees(beta)], result: degrees(line) },
  ];
  const slope = (): Working => {
    const value = a * cosDegrees(line);
    return {
      value,
      steps: [
        {
          formula: "ds/dα = a·cos w, per radian",
          worked: [mm(a), " · cos ", degrees(line)],
          result: mm(value),
        },
      ],
    };
  };
  if (stopOn === undefined) return { before, slope, ...roundContact(a, line) };
  if (stopOn === "frame") return { before, slope, ...padOnArm(a, line) };
  const g0 = terms.length("gap", "g0", "tip of the stop off its pad at ride");
  return { before, slope, ...padOnFrame(a, line, g0) };
}

type Turning = Pick<ContactWorking, "turn" | "closing">;

function roundContact(a: number, line: number): Turning {
  return {
    turn(closing, letter) {
      const alpha = line - asinDegrees(sinDegrees(line) - closing / a);
      return {
        value: alpha,
        steps: [
          {
            formula: `α = w − asin(sin w − ${letter}/a)`,
            worked: [
              degrees(line),
              " − asin[sin ",
              degrees(line),
              " − ",
              mm(closing),
              " / ",
              mm(a),
              "]",
            ],
            result: degrees(alpha),
          },
        ],
      };
    },
    closing(turn) {
      const value = a * (sinDegrees(line) - sinDegrees(line - turn));
      return {
        value,
        steps: [
          {
            formula: "s = a·[sin w − sin(w − α)]",
            worked: [mm(a), " · [sin ", degrees(line), " − sin ", degrees(line - turn), "]"],
            result: mm(value),
          },
        ],
      };
    },
  };
}

function padOnArm(a: number, line: number): Turning {
  const along = a * cosDegrees(line);
  const up = a * sinDegrees(line);
  return {
    turn(closing, letter) {
      const left = up - closing;
      const alpha = atan2Degrees(along, left) - acosDegrees(up / Math.hypot(left, along));
      return {
        value: alpha,
        steps: [
          {
            formula: `A = a·sin w − ${letter}`,
            worked: [mm(a), " · sin ", degrees(line), " − ", mm(closing)],
            result: mm(left),
          },
          {
            formula: "B = a·cos w",
            worked: [mm(a), " · cos ", degrees(line)],
            result: mm(along),
          },
          {
            formula: "α = atan2(B, A) − acos[a·sin w/√(A² + B²)]",
            worked: [
              "atan2(",
              mm(along),
              "; ",
              mm(left),
              ") − acos[",
              mm(up),
              " / √((",
              mm(left),
              ")² + (",
              mm(along),
              ")²)]",
            ],
            result: degrees(alpha),
          },
        ],
      };
    },
    closing(turn) {
      const value = (a * (sinDegrees(line + turn) - sinDegrees(line))) / cosDegrees(turn);
      return {
        value,
        steps: [
          {
            formula: "s = a·[sin(w + α) − sin w]/cos α",
            worked: [
              mm(a),
              " · [sin ",
              degrees(line + turn),
              " − sin ",
              degrees(line),
              "] / cos ",
              degrees(turn),
            ],
            result: mm(value),
          },
        ],
      };
    },
  };
}

function padOnFrame(a: number, line: number, g0: number): Turning {
  const back = -a * cosDegrees(line);
  const up = a * sinDegrees(line);
  return {
    turn(closing, letter) {
      const left = up + closing - g0;
      const alpha = atan2Degrees(back, left) + acosDegrees((up - g0) / Math.hypot(left, back));
      return {
        value: alpha,
        steps: [
          {
            formula: `A = a·sin w + ${letter} − g0`,
            worked: [mm(a), " · sin ", degrees(line), " + ", mm(closing), " − ", mm(g0)],
            result: mm(left),
          },
          {
            formula: "B = −a·cos w",
            worked: ["−", mm(a), " · cos ", degrees(line)],
            result: mm(back),
          },
          {
            formula: "α = atan2(B, A) + acos[(a·sin w − g0)/√(A² + B²)]",
            worked: [
              "atan2(",
              mm(back),
              "; ",
              mm(left),
              ") + acos[",
              mm(up - g0),
              " / √((",
              mm(left),
              ")² + (",
              mm(back),
              ")²)]",
            ],
            result: degrees(alpha),
          },
        ],
      };
    },
    closing(turn) {
      const value = g0 + (a * (sinDegrees(line) - sinDegrees(line - turn)) - g0) / cosDegrees(turn);
      return {
        value,
        steps: [
          {
            formula: "s = g0 + (a·[sin w − sin(w − α)] − g0)/cos α",
            worked: [
              mm(g0),
              " + (",
              mm(a),
              " · [sin ",
              degrees(line),
              " − sin ",
              degrees(line - turn),
              "] − ",
              mm(g0),
              ") / cos ",
              degrees(turn),
            ],
            result: mm(value),
          },
        ],
      };
    },
  };
}

/**
 * The lower mount turns about the pivot and the upper mount stands still, so the damper, or the strut above its
 * arm, is the third side of a triangle (law of cosines). `aside` p is the distance at which the strut's
 * axis passes the lower joint; 0 for a damper.
 */
export function triangleContact(
  a: number,
  phi: number,
  length: number,
  lean: number,
  aside: number,
): ContactWorking {
  const x = a * cosDegrees(phi) - length * sinDegrees(lean);
  const y = -a * sinDegrees(phi) + length * cosDegrees(lean);
  const q = Math.hypot(x, y);
  const gamma = acosDegrees((q * q + a * a - length * length) / (2 * a * q));
  const straight = Math.sqrt(length * length - aside * aside);
  const before: readonly FormulaStep[] = [
    {
      formula: "q = √[(a·cos φ0 − L0·sin β)² + (L0·cos β − a·sin φ0)²]",
      worked: ["√[(", mm(x), ")² + (", mm(y), ")²]"],
      result: mm(q),
    },
    {
      formula: "γ0 = acos[(q² + a² − L0²)/(2·a·q)]",
      worked: [
        "acos[((",
        mm(q),
        ")² + (",
        mm(a),
        ")² − (",
        mm(length),
        ")²) / (2 · ",
        mm(a),
        " · ",
        mm(q),
        ")]",
      ],
      result: degrees(gamma),
    },
    ...(aside === 0
      ? []
      : [
          {
            formula: "L1 = √(L0² − p²)",
            worked: ["√[(", mm(length), ")² − (", mm(aside), ")²]"],
            result: mm(straight),
          },
        ]),
  ];
  const letters = aside === 0 ? "L0" : "L1";
  return {
    before,
    slope() {
      const value = (a * q * sinDegrees(gamma)) / straight;
      return {
        value,
        steps: [
          {
            formula: `ds/dα = a·q·sin γ0/${letters}, per radian`,
            worked: [mm(a), " · ", mm(q), " · sin ", degrees(gamma), " / ", mm(straight)],
            result: mm(value),
          },
        ],
      };
    },
    turn(closing, letter) {
      const left = straight - closing;
      const across = Math.hypot(left, aside);
      const angle = acosDegrees((q * q + a * a - across * across) / (2 * a * q));
      const alpha = gamma - angle;
      return {
        value: alpha,
        steps: [
          {
            formula: aside === 0 ? `D = L0 − ${letter}` : `D = √[(L1 − ${letter})² + p²]`,
            worked:
              aside === 0
                ? [mm(length), " − ", mm(closing)]
                : ["√[(", mm(left), ")² + (", mm(aside), ")²]"],
            result: mm(across),
          },
          {
            formula: "α = γ0 − acos[(q² + a² − D²)/(2·a·q)]",
            worked: [
              degrees(gamma),
              " − acos[((",
              mm(q),
              ")² + (",
              mm(a),
              ")² − (",
              mm(across),
              ")²) / (2 · ",
              mm(a),
              " · ",
              mm(q),
              ")]",
            ],
            result: degrees(alpha),
          },
        ],
      };
    },
    closing(turn) {
      const angle = gamma - turn;
      const across = Math.sqrt(q * q + a * a - 2 * a * q * cosDegrees(angle));
      const value = straight - Math.sqrt(across * across - aside * aside);
      return {
        value,
        steps: [
          {
            formula: "D = √[q² + a² − 2·a·q·cos(γ0 − α)]",
            worked: [
              "√[(",
              mm(q),
              ")² + (",
              mm(a),
              ")² − 2 · ",
              mm(a),
              " · ",
              mm(q),
              " · cos ",
              degrees(angle),
              "]",
            ],
            result: mm(across),
          },
          {
            formula: aside === 0 ? "s = L0 − D" : "s = L1 − √(D² − p²)",
            worked:
              aside === 0
                ? [mm(length), " − ", mm(across)]
                : [mm(straight), " − √[(", mm(across), ")² − (", mm(aside), ")²]"],
            result: mm(value),
          },
        ],
      };
    },
  };
}

/** The stop on the rod of a damper that stands on an arm. */
export function damperContact(terms: MeasuredTerms, armAngle: number): ContactWorking {
  const a = terms.length("pivotToMount", "a", "pivot line to the lower mount");
  const phi = terms.angle(
    "mountLineAngle",
    "φ0",
    "line to the lower mount below the horizontal",
    armAngle,
  );
  const length = terms.length("damperLength", "L0", "shock eye to eye at ride");
  const lean = terms.angle("stopLean", "β", "lean of the shock, top toward the pivot");
  return triangleContact(a, phi, length, lean, 0);
}

import { gapOf } from "../budget/gap.ts";
import type { Advice, Check, Corner, CornerAssessment, Fitment, UseRules } from "../fitment.ts";
import { kinematicsOf } from "../kinematics/kinematics.ts";
import { limitTouches, readingName } from "../readingNames.ts";
import { length, type Sentence } from "../sentence.ts";
import { carryShares } from "./decisions.ts";

/** Least extra height for the reserve, mm: by a taller stop of the same build, and by a spacer. */
interface LeastHeight {
  readonly taller: number;
  readonly spacer: number;
}

/** What may be added to the stop's height on one corner, mm; negative = must or may come off. */
interface HeightRoom {
  /** Null without limits. */
  readonly least: LeastHeight | null;
  /** Most before contact comes too early; null where not known. */
  readonly most: number | null;
}

/**
 * What to do about a corner, most useful first: another height where one fits, or that none does and
 * what else would; another stiffness; which readings to take again; or that it fits.
 */
export function advise(
  fitment: Fitment,
  corner: Corner,
  assessed: CornerAssessment,
  rules: UseRules,
): readonly Advice[] {
  const advice: Advice[] = [];
  const find = (id: Check["id"]) => assessed.checks.find((check) => check.id === id);
  const { least, most } = heightRoom(fitment, corner, assessed);
  const clearance = find("clearance");
  const early = find("earlyContact")?.state;
  if (clearance?.state !== "ok" && least !== null && least.spacer > 0) {
    advice.push(moreHeightAdvice(assessed, least, most ?? Number.POSITIVE_INFINITY, rules));
  } else if ((early === "care" || early === "no") && most !== null && most < 0) {
    advice.push(lessHeightAdvice(assessed, least, most, rules));
  } else if (clearance?.state === "care") {
    advice.push(sureHeightAdvice(assessed, clearance, most ?? Number.POSITIVE_INFINITY));
  }
  const stiffness = find("stiffness");
  if (stiffness?.state === "no") advice.push(stiffnessAdvice(assessed, stiffness));
  const named = new Set<string>();
  for (const check of assessed.checks) {
    if (check.state !== "unsure" || check.reading === undefined || named.has(check.reading))
      continue;
    named.add(check.reading);
    advice.push({ kind: "measureAgain", reading: check.reading, sentence: check.sentence });
  }
  const troubled = assessed.checks.some(({ state }) => state === "care" || state === "no");
  if (clearance?.state === "ok" && early === "ok" && !troubled) {
    advice.unshift(fitsAdvice(least, most));
  }
  return advice;
}

function heightRoom(fitment: Fitment, corner: Corner, assessed: CornerAssessment): HeightRoom {
  const { tallerMm: taller, spacerMm: spacer } = assessed;
  return {
    least: taller === null || spacer === null ? null : { taller, spacer },
    most:
      fitment.stop.duty === "carry"
        ? mostForCarrying(fitment, corner, assessed)
        : assessed.mostExtraHeightMm,
  };
}

/**
 * Most extra height of a stop made to carry, mm: what brings its compression under load to a quarter
 * of δu, with the sag it has now (common practice). A taller stop holds the vehicle up, so that this
 * errs on the side of less height.
 */
function mostForCarrying(
  fitment: Fitment,
  corner: Corner,
  assessed: CornerAssessment,
): number | null {
  if (assessed.loadedSagMm === null) return null;
  const kinematics = kinematicsOf(fitment.layout, corner);
  if (!kinematics.ok) return null;
  const closing = kinematics.value.closing(assessed.loadedSagMm);
  if (!closing.ok) return null;
  const gap = gapOf(fitment, corner);
  return gap.ok
    ? carryShares.ok * fitment.stop.usableCompressionMm + gap.value - closing.value
    : null;
}

function moreHeightAdvice(
  assessed: CornerAssessment,
  least: LeastHeight,
  most: number,
  rules: UseRules,
): Advice {
  if (least.taller <= most) return tallerAdvice(assessed, least, most);
  if (least.spacer > most) return noHeightFits(assessed, least.spacer, most, rules);
  return {
    kind: "taller",
    sentence: [
      "Fit a spacer of ",
      length(least.spacer),
      ...range(assessed.intervals.spacerMm),
      ", and no more than ",
      length(most),
      ". A taller stop of the same build would be met too early.",
    ],
  };
}

function lessHeightAdvice(
  assessed: CornerAssessment,
  least: LeastHeight | null,
  most: number,
  rules: UseRules,
): Advice {
  if (least !== null && least.taller > most)
    return noHeightFits(assessed, least.spacer, most, rules);
  const asFarAs: Sentence =
    least === null
      ? []
      : [
          " or a little more; up to ",
          length(-least.taller),
          " there is still enough left before the hard limit",
        ];
  return {
    kind: "shorter",
    sentence: [
      "Fit a stop shorter by ",
      length(-most),
      ...asFarAs,
      ". Carrying less, or a stiffer or higher spring, frees travel too.",
    ],
  };
}

function tallerAdvice(assessed: CornerAssessment, least: LeastHeight, most: number): Advice {
  return {
    kind: "taller",
    sentence: [
      "Fit a stop of the same build taller by ",
      length(least.taller),
      ...range(assessed.intervals.tallerMm),
      ", or a spacer of ",
      length(least.spacer),
      ...range(assessed.intervals.spacerMm),
      ...(Number.isFinite(most)
        ? [". More than ", length(most), " would be met too early."]
        : [". From how much on it would be met too early is not known."]),
    ],
  };
}

/** The mean is enough but its doubt is not: as much more height as makes it sure, or a closer reading. */
function sureHeightAdvice(assessed: CornerAssessment, { reading }: Check, most: number): Advice {
  const sure = Math.max(0, assessed.intervals.spacerMm?.[1] ?? 0);
  const named = reading === undefined ? {} : { reading };
  return sure > most
    ? {
        kind: "measureAgain",
        ...named,
        sentence: [
          `Measure ${readingName(reading ?? `${assessed.side}.gap`)} again, more closely: the spacer of `,
          length(sure),
          " that would make it sure would be met too early.",
        ],
      }
    : {
        kind: "taller",
        ...named,
        sentence: ["A spacer of ", length(sure), " makes it sure; so may a closer reading."],
      };
}

function noHeightFits(
  assessed: CornerAssessment,
  wanted: number,
  most: number,
  rules: UseRules,
): Advice {
  const kind = assessed.hardLimit;
  const room = Math.max(0, wanted - most) * assessed.leverRatio;
  return {
    kind: "noHeightFits",
    sentence: [
      "No height fits: to keep ",
      length(rules.reserveMm),
      wanted < 0
        ? " of reserve the stop may shrink by no more than "
        : " of reserve the stop must grow by at least ",
      length(Math.abs(wanted)),
      most < 0
        ? ", but not to be met too early it must shrink by at least "
        : ", but not to be met too early it may grow by no more than ",
      length(Math.abs(most)),
      ". What would help: more room before ",
      `${kind === null ? "the hard limit" : limitTouches[kind]} (about `,
      length(room),
      " of wheel travel), a stop of another build that does its work in less compression, or less payload.",
    ],
  };
}

function stiffnessAdvice(assessed: CornerAssessment, check: Check): Advice {
  const classWindow = assessed.classWindow;
  if (classWindow === null) {
    return {
      kind: "otherStiffness",
      sentence: [
        "Change the height first: at this height no stiffness works. If none does at any height, move the hard limit or expect less of the suspension.",
      ],
    };
  }
  const [least, greatest] = classWindow;
  const words =
    check.side === "soft" ? "a stiffer stop" : check.side === "stiff" ? "a softer stop" : "a stop";
  return {
    kind: "otherStiffness",
    sentence: [
      `Fit ${words} of `,
      { kind: "stiffnessClass", value: least },
      ...(least === greatest ? [] : [" to ", { kind: "stiffnessClass", value: greatest } as const]),
      " at this height.",
    ],
  };
}

function fitsAdvice(least: LeastHeight | null, most: number | null): Advice {
  const spare = length(Math.max(0, -(least?.spacer ?? 0)));
  const words: Sentence =
    most === null
      ? ["It could be shorter by ", spare, "."]
      : [
          "Its height is right: it could be shorter by ",
          spare,
          " or taller by ",
          length(Math.max(0, most)),
          " and still fit.",
        ];
  return { kind: "fits", sentence: words };
}

function range(interval: readonly [number, number] | null): Sentence {
  return interval === null
    ? []
    : [" (95 %: ", length(interval[0]), " to ", length(interval[1]), ")"];
}

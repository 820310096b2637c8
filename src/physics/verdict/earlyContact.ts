import type { Check, Interval, State, Stop } from "../fitment.ts";
import { length, type Sentence } from "../sentence.ts";
import { outsideSentence } from "./clearance.ts";
import { type CornerEvidence, mostDoubted, mostOutsideShare, takeAgain } from "./cornerEvidence.ts";
import { decide, decideCarry } from "./decisions.ts";
import { type MissingRideData, missingCheck } from "./missingRideData.ts";

/**
 * Is the stop met too often? For duty impact decided by P(z_c ≥ z_need) laden and unladen; for duty
 * carry by its compression under load, without a probability. Where ride data
 * are missing, the check says which, and is unsure unless what is known already decides. A stop made for
 * impacts that is pressed with the vehicle standing is said so first.
 */
export function earlyContactCheck(evidence: CornerEvidence): Check {
  if (evidence.fitment.stop.duty === "carry") return carryCheck(evidence);
  const check = impactCheck(evidence);
  return { ...check, sentence: [...standingSentence(evidence), ...check.sentence] };
}

/** That a stop made for impacts touches or is pressed with the vehicle standing, by how much; else empty. */
function standingSentence({ fitment, corner }: CornerEvidence): Sentence {
  const { gapMm } = corner;
  if (gapMm > 0) return [];
  const asMeasured = fitment.recordedStop === undefined && fitment.spacerMm === undefined;
  if (gapMm === 0)
    return [asMeasured ? "The stop touches at rest. " : "The stop would touch at rest. "];
  return [
    asMeasured ? "It sits on its stop, pressed by " : "It would sit on its stop, pressed by ",
    length(-gapMm),
    ". ",
  ];
}

function impactCheck(evidence: CornerEvidence): Check {
  const { corner, road, draws, contactBeyond } = evidence;
  const laden = contactBeyond.laden;
  const unladen = contactBeyond.unladen;
  const probability = laden === null ? {} : { probability: laden };
  if (draws.outsideShare > mostOutsideShare) {
    const reading = mostDoubted(evidence, "contact");
    return {
      id: "earlyContact",
      state: "unsure",
      ...probability,
      reading,
      sentence: outsideSentence(evidence),
    };
  }
  const free = length(corner.budget.contactMm);
  if (unladen === null || road.freeTravelNeededUnladenMm === null) {
    return unknownCheck(evidence, needsForTravel);
  }
  const unladenNeed = length(road.freeTravelNeededUnladenMm);
  if (laden === null || road.freeTravelNeededMm === null) {
    return decide(0, unladen) === "no"
      ? {
          id: "earlyContact",
          state: "no",
          reading: mostDoubted(evidence, "contact"),
          sentence: tooEarly(unladenNeed, free),
        }
      : unknownCheck(evidence, needsForTravel);
  }
  const state = decide(laden, unladen);
  const ladenNeed = length(road.freeTravelNeededMm);
  // The mean is enough; that the true travel is, is not sure enough.
  const tooClose = corner.budget.contactMm >= road.freeTravelNeededMm;
  const sentences: Readonly<Record<typeof state, Sentence>> = {
    ok: ["Loaded, this use needs ", ladenNeed, " of free travel. You have ", free, "."],
    care: [
      tooClose
        ? "Loaded, it is too close to call whether the stop touches too often. This use needs "
        : "Loaded, the stop touches too often: this use needs ",
      ladenNeed,
      tooClose ? " of free travel and has " : " of free travel and has only ",
      free,
      ". As measured, the ",
      unladenNeed,
      " needed are there.",
    ],
    no: tooEarly(unladenNeed, free),
    unsure: [
      "Can't tell whether the stop touches too often. As measured this use needs ",
      unladenNeed,
      " of free travel and has about ",
      free,
      ".",
      ...takeAgain(evidence, "contact"),
    ],
  };
  return {
    id: "earlyContact",
    state,
    probability: laden,
    ...(state === "ok" ? {} : { reading: mostDoubted(evidence, "contact") }),
    sentence: sentences[state],
  };
}

/** A stop that touches or is pressed leaves no free travel: no number below zero is told. */
function tooEarly(need: ReturnType<typeof length>, free: ReturnType<typeof length>): Sentence {
  const has: Sentence =
    free.value > 0
      ? [" of free travel and has only ", free, "."]
      : [" of free travel and has none."];
  return ["The stop touches too often even as measured: this use needs ", need, ...has];
}

function carryCheck(evidence: CornerEvidence): Check {
  const { loadedCompressionMm, fitment } = evidence;
  if (loadedCompressionMm === null) {
    return unknownCheck(evidence, ["wheelRateNPerMm", "payloadPerCornerKg"]);
  }
  const share = loadedCompressionMm / fitment.stop.usableCompressionMm;
  const within = evidence.estimatedCompressionMm;
  const state = carryState(fitment.stop, loadedCompressionMm, within);
  if (within !== null && state === "unsure") {
    return {
      id: "earlyContact",
      state,
      reading: "stop.curve",
      sentence: [
        "This stop is made to support load, and its curve is an estimate. Within its ± it is pressed by ",
        length(within[0]),
        " to ",
        length(within[1]),
        " under load, which may be too much. Have the stop tested, or fit one that was.",
      ],
    };
  }
  const sentence: Sentence = [
    "This stop is made to support load. Loaded, it is pressed by ",
    length(loadedCompressionMm),
    ", ",
    { kind: "share", value: share },
    " of its usable compression",
    state === "ok"
      ? "."
      : state === "care"
        ? ": more than the quarter that leaves room for bumps."
        : ": more than half, so too little is left for bumps.",
  ];
  return state === "ok"
    ? { id: "earlyContact", state, sentence }
    : { id: "earlyContact", state, reading: "ride.payloadPerCornerKg", sentence };
}

/** Of a stop made to carry, pressed by so much under load; unsure where an estimated curve leaves it open. */
export function carryState(
  { usableCompressionMm }: Pick<Stop, "usableCompressionMm">,
  loadedCompressionMm: number,
  within: Interval | null,
): State {
  const decided = (compression: number) => decideCarry(compression / usableCompressionMm);
  return within !== null && decided(within[0]) !== decided(within[1])
    ? "unsure"
    : decided(loadedCompressionMm);
}

const needsForTravel: readonly MissingRideData[] = [
  "cornerMassKg",
  "wheelRateNPerMm",
  "tyreRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
  "payloadPerCornerKg",
];

function unknownCheck(evidence: CornerEvidence, needed: readonly MissingRideData[]): Check {
  const { side } = evidence.corner.corner;
  const missing = needed.filter((name) => evidence.missing.includes(name));
  const [fault] = evidence.road.faults;
  if (missing.length === 0 && fault !== undefined) {
    return {
      id: "earlyContact",
      state: "unsure",
      reading: fault.reading ?? mostDoubted(evidence, "contact"),
      sentence: ["Can't tell how often the stop touches. ", ...fault.sentence],
    };
  }
  return missing.length === 0
    ? {
        id: "earlyContact",
        state: "unsure",
        reading: mostDoubted(evidence, "contact"),
        sentence: ["Can't tell how often the stop touches.", ...takeAgain(evidence, "contact")],
      }
    : missingCheck("earlyContact", "how often the stop touches", side, missing);
}

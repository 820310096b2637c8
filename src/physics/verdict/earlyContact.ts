import * as messages from "../../words/compiled/physics/verdict.ts";
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
  if (gapMm === 0) return [asMeasured ? messages.stopTouchesAtRest : messages.stopWouldTouchAt];
  return [
    messages.itSitsOnIts({
      isAsMeasured: Boolean(asMeasured),
      gapMm: length(-gapMm),
    }),
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
    ok: [messages.loadedThisUseNeeds({ ladenNeed, free })],
    care: [
      messages.loadedItIsToo({
        isTooClose: Boolean(tooClose),
        ladenNeed,
        free,
        unladenNeed,
      }),
    ],
    no: tooEarly(unladenNeed, free),
    unsure: [
      messages.cantTellWhetherStopTouches({
        unladenNeed,
        free,
        takeAgain: takeAgain(evidence, "contact"),
      }),
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
    free.value > 0 ? [messages.ofFreeTravelAnd({ free })] : [messages.ofFreeTravelAndHas];
  return [messages.stopTouchesTooOften({ need, has })];
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
        messages.thisStopIsMade({
          within: length(within[0]),
          within2: length(within[1]),
        }),
      ],
    };
  }
  const sentence: Sentence = [
    messages.thisStopIsMadeTo({
      loadedCompressionMm: length(loadedCompressionMm),
      share: { kind: "share", value: share },
      state,
    }),
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
      sentence: [messages.cantTellHowOften({ sentence: fault.sentence })],
    };
  }
  return missing.length === 0
    ? {
        id: "earlyContact",
        state: "unsure",
        reading: mostDoubted(evidence, "contact"),
        sentence: [messages.cantTellHowOftenStop, ...takeAgain(evidence, "contact")],
      }
    : missingCheck("earlyContact", messages.howOftenStopTouches, side, missing);
}

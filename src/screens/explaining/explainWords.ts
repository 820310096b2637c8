import type { Assessment, CornerAssessment, LimitKind } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { length, type Sentence, spacer } from "../../physics/sentence.ts";
import { sentenceOf } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/explaining.ts";

/** What touches hard, as a customer says it. */
const touching: { readonly [Kind in LimitKind]: string } = {
  tyre: messages.tireTouchesBody,
  damper: messages.shockReachesItsEnd,
  spring: messages.springClosesUp,
  metal: messages.metalMeetsMetal,
  other: messages.somethingElseIsHit,
};

/** A part of what is told: a heading, and its sentences. */
export interface Explained {
  readonly heading: string;
  readonly sentences: readonly Sentence[];
}

/** The side that has the least left, which is the one to tell. */
function worst(corners: readonly CornerAssessment[]): CornerAssessment | undefined {
  const left = (corner: CornerAssessment) => corner.reserveMm ?? Number.POSITIVE_INFINITY;
  return [...corners].sort((a, b) => left(a) - left(b))[0];
}

type Failed = "soft" | "stiff" | "hits" | "early";

/** What is wrong today beside what touches: of hits, and of how often the stop is met. */
function failedToday({ corners }: Assessment): readonly Failed[] {
  const failed = corners.flatMap(({ checks }) =>
    checks.flatMap(({ id, state, side }): readonly Failed[] => {
      if (state !== "no") return [];
      if (id === "earlyContact") return ["early"];
      return id === "stiffness" ? [side === "soft" || side === "stiff" ? side : "hits"] : [];
    }),
  );
  return [...new Set(failed)];
}

const failedWords: { readonly [Each in Failed]: string } = {
  soft: messages.stopIsTooSoft,
  stiff: messages.stopIsTooHard,
  hits: messages.stopDoesNotTake,
  early: messages.onOrdinaryRoadsWheel,
};

function today(assessment: Assessment): readonly Sentence[] {
  const words = failedToday(assessment).map((each): Sentence => [failedWords[each]]);
  return [...travelToday(assessment), ...words];
}

function travelToday({ corners }: Assessment): readonly Sentence[] {
  const corner = worst(corners);
  if (corner === undefined) return [];
  const { wheelTravelToContactMm: touch, wheelTravelToFullStopMm: full, hardLimit } = corner;
  const sits: Sentence =
    touch <= 0
      ? [messages.bumpStopCarriesVehicle]
      : sentenceOf(messages.wheelMovesUpThen, { touch: length(touch) });
  const after: Sentence = sentenceOf(messages.afterStopIsPressed, {
    full: length(Math.max(full, 0)),
  });
  const hit = corner.wheelTravelToHardLimitMm;
  if (hardLimit === null || hit === null) {
    return [sits, after, [messages.whatIsHitAfter]];
  }
  const before = hit <= full;
  return [
    sits,
    before
      ? sentenceOf(messages.butAfterBeforeStop, {
          hit: length(Math.max(hit, 0)),
          hardLimit: touching[hardLimit],
        })
      : sentenceOf(messages.stopIsPressedFlat, {
          after: after.slice(0, -1),
          hit: length(hit - full),
          hardLimit: touching[hardLimit],
        }),
  ];
}

/** Nothing is prescribed because too little is known, not because nothing fits. */
export function isNotKnownYet(prescription: Prescription): boolean {
  return prescription.none && prescription.freed.length === 0 && prescription.remarks.length === 0;
}

function changed(assessment: Assessment, prescription: Prescription): readonly Sentence[] {
  if (isNotKnownYet(prescription)) {
    return [[messages.whichPartDoesIt]];
  }
  if (prescription.none) {
    return [
      [messages.noPartThatWas],
      ...(prescription.freed.length > 0 ? [[messages.somethingElseOnVehicle] as Sentence] : []),
    ];
  }
  const { change, candidate, spacerMm, trial } = prescription;
  if (change === "nothing") return [[messages.nothingHasToBe]];
  const corner = worst(trial.assessment.corners);
  const { name, partNumber } = candidate.stop;
  const part = partNumber === undefined ? `“${name}”` : messages.partNumber({ name, partNumber });
  const [{ side } = { side: "left" }, other] = assessment.corners;
  const where = other ? messages.onBothSides : messages.on2({ side });
  const what: Sentence =
    change === "spacer"
      ? sentenceOf(messages.spacerOfGoesUnder, { spacerMm: spacer(spacerMm), where })
      : spacerMm > 0
        ? sentenceOf(messages.stopGoesInWith, { part, where, spacerMm: spacer(spacerMm) })
        : [messages.stopGoesIn({ part, where })];
  const hit = corner?.wheelTravelToHardLimitMm ?? null;
  const left = corner && hit !== null ? hit - corner.wheelTravelToFullStopMm : null;
  const does: Sentence =
    left !== null && left >= 0 && corner?.hardLimit
      ? sentenceOf(messages.itThenStopsWheel, {
          left: length(left),
          hardLimit: touching[corner.hardLimit],
        })
      : [messages.itThenTakesHit];
  const tookNone = failedToday(assessment).some((each) => each !== "early");
  const takes = trial.assessment.corners.every(({ checks }) =>
    checks.some(({ id, state }) => id === "stiffness" && state === "ok"),
  );
  return [
    what,
    does,
    ...(tookNone && takes ? [[messages.itTakesHitsOf] as Sentence] : []),
    ...(other ? [] : [[messages.right({ side })] as Sentence]),
  ];
}

function costs(assessment: Assessment, prescription: Prescription): readonly Sentence[] {
  if (prescription.none || prescription.change === "nothing") return [];
  const lost = assessment.corners.flatMap(({ side, wheelTravelToContactMm: now }) => {
    const after = prescription.trial.assessment.corners.find((each) => each.side === side);
    return after === undefined
      ? []
      : [Math.max(now, 0) - Math.max(after.wheelTravelToContactMm, 0)];
  });
  const most = Math.max(0, ...lost);
  return most < 0.5
    ? [[messages.itCostsNoFree]]
    : [sentenceOf(messages.wheelMeetsStopOf, { most: length(most) }), [messages.onRoughGroundYou]];
}

function unsure(assessment: Assessment, prescription: Prescription): readonly Sentence[] {
  const probability = prescription.none
    ? null
    : Math.min(
        1,
        ...prescription.trial.assessment.corners.map(
          ({ clearanceProbability }) => clearanceProbability ?? 0,
        ),
      );
  const known = probability !== null && probability > 0;
  return [
    ...(known
      ? [
          [
            messages.of100VehiclesMeasured({
              probability:
                probability >= 0.995 ? messages.nearlyAll : Math.floor(100 * probability),
            }),
          ] as Sentence,
        ]
      : [[messages.marginOfErrorCant] as Sentence]),
    ...(assessment.corners.some(({ events }) => events === null)
      ? [[messages.howItRidesWas] as Sentence]
      : []),
    [messages.itWasWorkedOut],
  ];
}

/** What is told to a customer: no term of the trade, one thought a sentence. */
export function explained(
  assessment: Assessment,
  prescription: Prescription,
): readonly Explained[] {
  const cost = costs(assessment, prescription);
  return [
    { heading: messages.today, sentences: today(assessment) },
    { heading: messages.whatPartChanges, sentences: changed(assessment, prescription) },
    ...(cost.length === 0 ? [] : [{ heading: messages.whatItCosts, sentences: cost }]),
    { heading: messages.whatRemainsUnsure, sentences: unsure(assessment, prescription) },
  ];
}

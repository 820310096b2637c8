import type { Assessment, CornerAssessment, LimitKind } from "../../physics/fitment.ts";
import type { Prescription } from "../../physics/prescription/index.ts";
import { length, type Sentence, spacer } from "../../physics/sentence.ts";

/** What touches hard, as a customer says it. */
const touching: { readonly [Kind in LimitKind]: string } = {
  tyre: "the tire touches the body",
  damper: "the shock reaches its end",
  spring: "the spring closes up",
  metal: "metal meets metal",
  other: "something else is hit",
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
  soft: "The stop is too soft for the hits of this use.",
  stiff: "The stop is too hard: the hits of this use come through.",
  hits: "The stop does not take the hits of this use.",
  early: "On ordinary roads the wheel reaches the stop too often.",
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
      ? ["The bump stop carries the vehicle already as it stands."]
      : ["The wheel moves up ", length(touch), ", then it meets the bump stop."];
  const after: Sentence = ["After ", length(Math.max(full, 0)), " the stop is pressed flat."];
  const hit = corner.wheelTravelToHardLimitMm;
  if (hardLimit === null || hit === null) {
    return [sits, after, ["What is hit after that was not measured."]];
  }
  const before = hit <= full;
  return [
    sits,
    before
      ? [
          "But after ",
          length(Math.max(hit, 0)),
          ` ${touching[hardLimit]}, before the stop is pressed all the way.`,
        ]
      : [
          ...after.slice(0, -1),
          " the stop is pressed flat, and only then, ",
          length(hit - full),
          ` later, ${touching[hardLimit]}.`,
        ],
  ];
}

/** Nothing is prescribed because too little is known, not because nothing fits. */
export function isNotKnownYet(prescription: Prescription): boolean {
  return prescription.none && prescription.freed.length === 0 && prescription.remarks.length === 0;
}

function changed(assessment: Assessment, prescription: Prescription): readonly Sentence[] {
  if (isNotKnownYet(prescription)) {
    return [["Which part does it is not known yet: something has to be measured again first."]];
  }
  if (prescription.none) {
    return [
      ["No part that was tried makes it right on its own."],
      ...(prescription.freed.length > 0
        ? [["Something else on the vehicle has to change first; the answer says what."] as Sentence]
        : []),
    ];
  }
  const { change, candidate, spacerMm, trial } = prescription;
  if (change === "nothing")
    return [["Nothing has to be changed: the stop that is fitted does it."]];
  const corner = worst(trial.assessment.corners);
  const { name, partNumber } = candidate.stop;
  const part = partNumber === undefined ? `“${name}”` : `“${name}”, part number ${partNumber},`;
  const [{ side } = { side: "left" }, other] = assessment.corners;
  const where = other ? "on both sides" : `on the ${side}`;
  const what: Sentence =
    change === "spacer"
      ? ["A spacer of ", spacer(spacerMm), ` goes under the stop ${where}.`]
      : spacerMm > 0
        ? [`The stop ${part} goes in ${where}, with a spacer of `, spacer(spacerMm), "."]
        : [`The stop ${part} goes in ${where}.`];
  const hit = corner?.wheelTravelToHardLimitMm ?? null;
  const left = corner && hit !== null ? hit - corner.wheelTravelToFullStopMm : null;
  const does: Sentence =
    left !== null && left >= 0 && corner?.hardLimit
      ? ["It then stops the wheel ", length(left), ` before ${touching[corner.hardLimit]}.`]
      : ["It then takes the hit in place of metal or tire, as far as was measured."];
  const tookNone = failedToday(assessment).some((each) => each !== "early");
  const takes = trial.assessment.corners.every(({ checks }) =>
    checks.some(({ id, state }) => id === "stiffness" && state === "ok"),
  );
  return [
    what,
    does,
    ...(tookNone && takes ? [["It takes the hits of this use."] as Sentence] : []),
    ...(other
      ? []
      : [
          [
            `The ${side === "left" ? "right" : "left"} was not measured. It has to be, before a part goes in there.`,
          ] as Sentence,
        ]),
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
    ? [["It costs no free travel: the wheel moves as far as before until it meets the stop."]]
    : [
        ["The wheel meets the stop ", length(most), " of travel sooner than today."],
        ["On rough ground you will feel it more often. It is softer than hitting metal."],
      ];
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
            `Of 100 vehicles measured like yours, the part is right on ${
              probability >= 0.995 ? "nearly all" : Math.floor(100 * probability)
            }.`,
          ] as Sentence,
        ]
      : [["The margin of error can't be said: too little was measured."] as Sentence]),
    ...(assessment.corners.some(({ events }) => events === null)
      ? [["How it rides was not worked out: weights or springs are not known."] as Sentence]
      : []),
    [
      "It was worked out from measurements. It is no certificate; the fitted vehicle has to be checked by hand.",
    ],
  ];
}

/** What is told to a customer: no term of the trade, one thought a sentence. */
export function explained(
  assessment: Assessment,
  prescription: Prescription,
): readonly Explained[] {
  const cost = costs(assessment, prescription);
  return [
    { heading: "Today", sentences: today(assessment) },
    { heading: "What the part changes", sentences: changed(assessment, prescription) },
    ...(cost.length === 0 ? [] : [{ heading: "What it costs", sentences: cost }]),
    { heading: "What remains unsure", sentences: unsure(assessment, prescription) },
  ];
}

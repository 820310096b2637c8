import type { CornerAssessment, Interval, UseRules } from "../../../physics/fitment.ts";
import type { Quantity } from "../../../physics/sentence.ts";
import {
  type CornerContext,
  contactsPerKm,
  type EventFigure,
  freeShare,
  freeTravelNeeded,
  impactFigure,
  leverRatio,
  leverRatioAtFullStop,
  loadedTravelToContact,
  mm,
  mostExtraHeight,
  oneWheelContact,
  oneWheelFullStop,
  oneWheelRatio,
  payloadSag,
  progressiveness,
  quantity,
  rateClass,
  reserve,
  roadTravelSigma,
  secantRate,
  spacerHeight,
  tallerHeight,
  travelToContact,
  travelToFullStop,
  travelToHardLimit,
  type WorkedFigure,
} from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import * as messages from "../../../words/compiled/screens/answer/formulas.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import type { Passage } from "../../howComputed/howComputedRoute.ts";
import {
  clearanceProbability,
  contactInterval,
  earlyContactProbability,
  reserveInterval,
} from "./doubtFigures.ts";

export type FigureGroup = "travel" | "stop" | "road" | "impact" | "doubt";

/** Where the figures of a group are derived. */
export const passageOf: { readonly [Group in FigureGroup]: Passage } = {
  travel: "travel-budget",
  stop: "the-stop",
  road: "road-and-contacts",
  impact: "impact",
  doubt: "doubt",
};

/** One number of the answer and how it came about. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  /** What it is one of, where several of a kind follow each other: an event. */
  readonly about?: string;
  /** Its title with what it is one of, where it stands alone. */
  readonly titleAlone?: string;
  readonly group: FigureGroup;
  /** A word where the figure is none; null: not known for this corner. */
  value(assessed: CornerAssessment): Quantity | string | null;
  /** 95 % interval of a length. */
  band?(assessed: CornerAssessment): Interval | null;
  worked(context: CornerContext): WorkedFigure | undefined;
}

const orNull = (make: (value: number) => Quantity, value: number | null | undefined) =>
  value === null || value === undefined ? null : make(value);
const share = (value: number) => quantity("share", value);
const contactRate = (value: number) => quantity("contactRate", value);

const travelFigures: readonly Figure[] = [
  {
    id: "leverRatio",
    title: messages.leverRatioWheelPer,
    group: "travel",
    value: (corner) => quantity("ratio", corner.leverRatio),
    worked: leverRatio,
  },
  {
    id: "leverRatioAtFullStop",
    title: messages.leverRatioStopFully,
    group: "travel",
    value: (corner) => quantity("ratio", corner.leverRatioAtFullStop),
    worked: leverRatioAtFullStop,
  },
  {
    id: "wheelTravelToContact",
    title: messages.wheelTravelToContact,
    group: "travel",
    value: (corner) => mm(corner.wheelTravelToContactMm),
    band: (corner) => corner.intervals.wheelTravelToContactMm,
    worked: travelToContact,
  },
  {
    id: "wheelTravelToFullStop",
    title: messages.wheelTravelToFull,
    group: "travel",
    value: (corner) => mm(corner.wheelTravelToFullStopMm),
    band: (corner) => corner.intervals.wheelTravelToFullStopMm,
    worked: travelToFullStop,
  },
  {
    id: "wheelTravelToHardLimit",
    title: messages.wheelTravelToHard,
    group: "travel",
    value: (corner) => orNull(mm, corner.wheelTravelToHardLimitMm),
    band: (corner) => corner.intervals.wheelTravelToHardLimitMm,
    worked: travelToHardLimit,
  },
  {
    id: "reserve",
    title: messages.reservePastFullCompression,
    group: "travel",
    value: (corner) => orNull(mm, corner.reserveMm),
    band: (corner) => corner.intervals.reserveMm,
    worked: reserve,
  },
  {
    id: "freeShare",
    title: messages.freeShareOfTravel,
    group: "travel",
    value: (corner) => orNull(share, corner.freeShare),
    worked: freeShare,
  },
  {
    id: "taller",
    title: messages.extraHeightByTaller,
    group: "travel",
    value: (corner) => orNull(mm, corner.tallerMm),
    band: (corner) => corner.intervals.tallerMm,
    worked: tallerHeight,
  },
  {
    id: "spacer",
    title: messages.extraHeightBySpacer,
    group: "travel",
    value: (corner) => orNull(mm, corner.spacerMm),
    band: (corner) => corner.intervals.spacerMm,
    worked: spacerHeight,
  },
];

const oneWheelFigures: readonly Figure[] = [
  {
    id: "oneWheelRatio",
    title: messages.oneWheelUpLever,
    group: "travel",
    value: (corner) => orNull((value) => quantity("ratio", value), corner.oneWheel?.leverRatio),
    worked: oneWheelRatio,
  },
  {
    id: "oneWheelContact",
    title: messages.oneWheelUpTravel,
    group: "travel",
    value: (corner) => orNull(mm, corner.oneWheel?.wheelTravelToContactMm),
    worked: oneWheelContact,
  },
  {
    id: "oneWheelFullStop",
    title: messages.oneWheelUpTravelTo,
    group: "travel",
    value: (corner) => orNull(mm, corner.oneWheel?.wheelTravelToFullStopMm),
    worked: oneWheelFullStop,
  },
];

const stopFigures: readonly Figure[] = [
  {
    id: "secantRate",
    title: messages.rateOfStopAt,
    group: "stop",
    value: (corner) => quantity("rate", corner.secantRateNPerMm),
    worked: secantRate,
  },
  {
    id: "rateClass",
    title: messages.stiffnessClass,
    group: "stop",
    value: (corner) => quantity("stiffnessClass", corner.stopRateClass),
    worked: rateClass,
  },
  {
    id: "progressive",
    title: messages.progressive,
    group: "stop",
    value: (corner) => (corner.progressive ? messages.yes : messages.no),
    worked: progressiveness,
  },
];

const roadFigures: readonly Figure[] = [
  {
    id: "roadTravelSigma",
    title: messages.wheelTravelOnThis,
    group: "road",
    value: (corner) => orNull(mm, corner.roadTravelSigmaMm),
    worked: roadTravelSigma,
  },
  {
    id: "contactsPerKm",
    title: messages.contactsOnThisRoad,
    group: "road",
    value: (corner) => orNull(contactRate, corner.contactsPerKm),
    worked: (context) => contactsPerKm(context, false),
  },
  {
    id: "loadedContactsPerKm",
    title: messages.contactsOnThisRoadLoaded,
    group: "road",
    value: (corner) => orNull(contactRate, corner.loadedContactsPerKm),
    worked: (context) => contactsPerKm(context, true),
  },
  {
    id: "loadedSag",
    title: messages.sagUnderPayload,
    group: "road",
    value: (corner) => orNull(mm, corner.loadedSagMm),
    worked: payloadSag,
  },
  {
    id: "loadedTravelToContact",
    title: messages.wheelTravelToContactLoaded,
    group: "road",
    value: (corner) => orNull(mm, corner.loadedTravelToContactMm),
    worked: loadedTravelToContact,
  },
  {
    id: "freeTravelNeededUnladen",
    title: messages.freeTravelNeededAs,
    group: "road",
    value: (corner) => orNull(mm, corner.freeTravelNeededUnladenMm),
    worked: (context) => freeTravelNeeded(context, false),
  },
  {
    id: "freeTravelNeeded",
    title: messages.freeTravelNeededLoaded,
    group: "road",
    value: (corner) => orNull(mm, corner.freeTravelNeededMm),
    worked: (context) => freeTravelNeeded(context, true),
  },
  {
    id: "mostExtraHeight",
    title: messages.mostExtraHeightBefore,
    group: "road",
    value: (corner) => orNull(mm, corner.mostExtraHeightMm),
    worked: mostExtraHeight,
  },
];

const doubtFigures: readonly Figure[] = [
  {
    id: "contactInterval",
    title: messages.travelToContactHalf,
    group: "doubt",
    value: ({
      intervals: {
        wheelTravelToContactMm: [low, high],
      },
    }) => mm((high - low) / 2),
    worked: contactInterval,
  },
  {
    id: "reserveInterval",
    title: messages.reserveHalfOfIts,
    group: "doubt",
    value: ({ intervals: { reserveMm } }) => reserveMm && mm((reserveMm[1] - reserveMm[0]) / 2),
    worked: reserveInterval,
  },
  {
    id: "clearanceProbability",
    title: messages.probabilityOfEnoughReserve,
    group: "doubt",
    value: (corner) => orNull(share, corner.clearanceProbability),
    worked: clearanceProbability,
  },
  {
    id: "earlyContactProbability",
    title: messages.probabilityOfEnoughFree,
    group: "doubt",
    value: (corner) => orNull(share, corner.earlyContactProbability),
    worked: earlyContactProbability,
  },
];

const eventParts: readonly {
  readonly name: EventFigure;
  readonly title: string;
  readonly make: (value: number) => Quantity;
}[] = [
  { name: "peakWheelTravelMm", title: messages.greatestWheelTravel, make: mm },
  { name: "peakCompressionMm", title: messages.greatestCompressionOfStop, make: mm },
  {
    name: "peakStopForceN",
    title: messages.greatestForceOfStop,
    make: (value) => quantity("force", value),
  },
  {
    name: "peakAccelerationG",
    title: messages.highestUpwardAcceleration,
    make: (value) => quantity("acceleration", value),
  },
  { name: "energyInJ", title: messages.energyIntoStop, make: (value) => quantity("energy", value) },
  {
    name: "energyOutJ",
    title: messages.energyBackOutOf,
    make: (value) => quantity("energy", value),
  },
  {
    name: "closingSpeedMmPerS",
    title: messages.speedAtWhichStop,
    make: (value) => quantity("speed", value),
  },
  {
    name: "leaveSpeedMmPerS",
    title: messages.speedAsWheelLeaves,
    make: (value) => quantity("speed", value),
  },
];

function impactFigures(rules: UseRules, unit: LengthUnit): readonly Figure[] {
  return rules.events.flatMap((event, index) =>
    eventParts.map(({ name, title, make }) => ({
      id: `event${index}.${name}`,
      title,
      about: eventWords(event, unit),
      titleAlone: messages.figureOfEvent({ event: eventWords(event, unit), figure: name }),
      group: "impact" as const,
      value: (corner: CornerAssessment) => orNull(make, corner.events?.[index]?.[name]),
      worked: (context: CornerContext) => impactFigure(context, index, name),
    })),
  );
}

/** Every figure of the answer, in the order shown. */
export function figuresOf(rules: UseRules, unit: LengthUnit): readonly Figure[] {
  return [
    ...travelFigures,
    ...oneWheelFigures,
    ...stopFigures,
    ...roadFigures,
    ...impactFigures(rules, unit),
    ...doubtFigures,
  ];
}

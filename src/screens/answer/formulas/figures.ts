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
    title: "Lever ratio, wheel per stop",
    group: "travel",
    value: (corner) => quantity("ratio", corner.leverRatio),
    worked: leverRatio,
  },
  {
    id: "leverRatioAtFullStop",
    title: "Lever ratio, stop fully compressed",
    group: "travel",
    value: (corner) => quantity("ratio", corner.leverRatioAtFullStop),
    worked: leverRatioAtFullStop,
  },
  {
    id: "wheelTravelToContact",
    title: "Wheel travel to contact",
    group: "travel",
    value: (corner) => mm(corner.wheelTravelToContactMm),
    band: (corner) => corner.intervals.wheelTravelToContactMm,
    worked: travelToContact,
  },
  {
    id: "wheelTravelToFullStop",
    title: "Wheel travel to full compression",
    group: "travel",
    value: (corner) => mm(corner.wheelTravelToFullStopMm),
    band: (corner) => corner.intervals.wheelTravelToFullStopMm,
    worked: travelToFullStop,
  },
  {
    id: "wheelTravelToHardLimit",
    title: "Wheel travel to hard contact",
    group: "travel",
    value: (corner) => orNull(mm, corner.wheelTravelToHardLimitMm),
    band: (corner) => corner.intervals.wheelTravelToHardLimitMm,
    worked: travelToHardLimit,
  },
  {
    id: "reserve",
    title: "Reserve past full compression",
    group: "travel",
    value: (corner) => orNull(mm, corner.reserveMm),
    band: (corner) => corner.intervals.reserveMm,
    worked: reserve,
  },
  {
    id: "freeShare",
    title: "Free share of the travel",
    group: "travel",
    value: (corner) => orNull(share, corner.freeShare),
    worked: freeShare,
  },
  {
    id: "taller",
    title: "Extra height by a taller stop",
    group: "travel",
    value: (corner) => orNull(mm, corner.tallerMm),
    band: (corner) => corner.intervals.tallerMm,
    worked: tallerHeight,
  },
  {
    id: "spacer",
    title: "Extra height by a spacer",
    group: "travel",
    value: (corner) => orNull(mm, corner.spacerMm),
    band: (corner) => corner.intervals.spacerMm,
    worked: spacerHeight,
  },
];

const oneWheelFigures: readonly Figure[] = [
  {
    id: "oneWheelRatio",
    title: "One wheel up: lever ratio",
    group: "travel",
    value: (corner) => orNull((value) => quantity("ratio", value), corner.oneWheel?.leverRatio),
    worked: oneWheelRatio,
  },
  {
    id: "oneWheelContact",
    title: "One wheel up: travel to contact",
    group: "travel",
    value: (corner) => orNull(mm, corner.oneWheel?.wheelTravelToContactMm),
    worked: oneWheelContact,
  },
  {
    id: "oneWheelFullStop",
    title: "One wheel up: travel to full compression",
    group: "travel",
    value: (corner) => orNull(mm, corner.oneWheel?.wheelTravelToFullStopMm),
    worked: oneWheelFullStop,
  },
];

const stopFigures: readonly Figure[] = [
  {
    id: "secantRate",
    title: "Rate of the stop at half its compression",
    group: "stop",
    value: (corner) => quantity("rate", corner.secantRateNPerMm),
    worked: secantRate,
  },
  {
    id: "rateClass",
    title: "Stiffness class",
    group: "stop",
    value: (corner) => quantity("stiffnessClass", corner.stopRateClass),
    worked: rateClass,
  },
  {
    id: "progressive",
    title: "Progressive",
    group: "stop",
    value: (corner) => (corner.progressive ? "yes" : "no"),
    worked: progressiveness,
  },
];

const roadFigures: readonly Figure[] = [
  {
    id: "roadTravelSigma",
    title: "Wheel travel on this road, standard deviation",
    group: "road",
    value: (corner) => orNull(mm, corner.roadTravelSigmaMm),
    worked: roadTravelSigma,
  },
  {
    id: "contactsPerKm",
    title: "Contacts on this road, as measured",
    group: "road",
    value: (corner) => orNull(contactRate, corner.contactsPerKm),
    worked: (context) => contactsPerKm(context, false),
  },
  {
    id: "loadedContactsPerKm",
    title: "Contacts on this road, loaded",
    group: "road",
    value: (corner) => orNull(contactRate, corner.loadedContactsPerKm),
    worked: (context) => contactsPerKm(context, true),
  },
  {
    id: "loadedSag",
    title: "Sag under the payload",
    group: "road",
    value: (corner) => orNull(mm, corner.loadedSagMm),
    worked: payloadSag,
  },
  {
    id: "loadedTravelToContact",
    title: "Wheel travel to contact, loaded",
    group: "road",
    value: (corner) => orNull(mm, corner.loadedTravelToContactMm),
    worked: loadedTravelToContact,
  },
  {
    id: "freeTravelNeededUnladen",
    title: "Free travel needed, as measured",
    group: "road",
    value: (corner) => orNull(mm, corner.freeTravelNeededUnladenMm),
    worked: (context) => freeTravelNeeded(context, false),
  },
  {
    id: "freeTravelNeeded",
    title: "Free travel needed, loaded",
    group: "road",
    value: (corner) => orNull(mm, corner.freeTravelNeededMm),
    worked: (context) => freeTravelNeeded(context, true),
  },
  {
    id: "mostExtraHeight",
    title: "Most extra height before contact is too early",
    group: "road",
    value: (corner) => orNull(mm, corner.mostExtraHeightMm),
    worked: mostExtraHeight,
  },
];

const doubtFigures: readonly Figure[] = [
  {
    id: "contactInterval",
    title: "Travel to contact, half of its 95 % range",
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
    title: "Reserve, half of its 95 % range",
    group: "doubt",
    value: ({ intervals: { reserveMm } }) => reserveMm && mm((reserveMm[1] - reserveMm[0]) / 2),
    worked: reserveInterval,
  },
  {
    id: "clearanceProbability",
    title: "Probability of enough reserve",
    group: "doubt",
    value: (corner) => orNull(share, corner.clearanceProbability),
    worked: clearanceProbability,
  },
  {
    id: "earlyContactProbability",
    title: "Probability of enough free travel",
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
  { name: "peakWheelTravelMm", title: "Greatest wheel travel", make: mm },
  { name: "peakCompressionMm", title: "Greatest compression of the stop", make: mm },
  {
    name: "peakStopForceN",
    title: "Greatest force of the stop",
    make: (value) => quantity("force", value),
  },
  {
    name: "peakAccelerationG",
    title: "Highest upward acceleration",
    make: (value) => quantity("acceleration", value),
  },
  { name: "energyInJ", title: "Energy into the stop", make: (value) => quantity("energy", value) },
  {
    name: "energyOutJ",
    title: "Energy back out of the stop",
    make: (value) => quantity("energy", value),
  },
  {
    name: "closingSpeedMmPerS",
    title: "Speed at which the stop closes",
    make: (value) => quantity("speed", value),
  },
  {
    name: "leaveSpeedMmPerS",
    title: "Speed as the wheel leaves the stop",
    make: (value) => quantity("speed", value),
  },
];

function impactFigures(rules: UseRules, unit: LengthUnit): readonly Figure[] {
  return rules.events.flatMap((event, index) =>
    eventParts.map(({ name, title, make }) => ({
      id: `event${index}.${name}`,
      title,
      about: eventWords(event, unit),
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

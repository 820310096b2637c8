import { checkIds } from "../../physics/choices.ts";
import type {
  Assessment,
  CheckId,
  CornerAssessment,
  Interval,
  State,
} from "../../physics/fitment.ts";
import {
  cornerReadingNames,
  geometryNames,
  type ReadingId,
  rideQuantities,
  rideReadings,
  settle,
  type ValueKind,
  type ValueName,
} from "../../physics/readings/index.ts";
import { type Message, semicolonList } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/review.ts";
import type {
  CheckLimit,
  CheckRecord,
  GeometryReadings,
  PartialLayout,
  TypedReading,
} from "../check/checkRecord.ts";
import { catalogueEntry } from "../entry/readingCatalogue.ts";
import { sourceOf, sourceWords } from "../entry/readingSource.ts";
import { estimateBand, stopTitle } from "../pack/stopTitle.ts";
import type { TableCell } from "./csv.ts";
import type { Decision, DeskState } from "./decision.ts";
import type { Submission } from "./submission.ts";

/** What one line of the table is about: one side of one version of a check. */
export interface TableSubject {
  readonly submission: Submission;
  readonly version: number;
  readonly state: DeskState;
  readonly decision: Decision | null;
  readonly record: CheckRecord;
  /** Null where it is not computed yet, or cannot be. */
  readonly assessment: Assessment | null;
  readonly side: "left" | "right";
}

interface Column {
  readonly header: Message;
  readonly field: (subject: TableSubject, corner: CornerAssessment | null) => TableCell;
}

const stateWords: { readonly [Each in State]: Message } = {
  ok: messages.fits,
  care: messages.takeCare,
  no: messages.doesNotFit,
  unsure: messages.notSure,
};
const deskWords: { readonly [Each in DeskState]: Message } = {
  new: messages.newWord,
  accepted: messages.accepted,
  askedAgain: messages.askedAgain,
  otherPart: messages.otherPartAdvised,
};

function armOf({ layout }: CheckRecord): PartialLayout {
  return layout;
}

const about: readonly Column[] = [
  { header: messages.checkId, field: ({ record }) => record.id },
  { header: messages.versionWord, field: ({ version }) => version },
  { header: messages.madeUtc, field: ({ record }) => record.createdAt },
  { header: messages.receivedUtc, field: ({ submission }) => submission.receivedAt },
  { header: messages.jobWord, field: ({ record }) => record.job?.label },
  { header: messages.jobNumber, field: ({ record }) => record.job?.number },
  { header: messages.momentWord, field: ({ record }) => record.job?.moment },
  { header: messages.vehicleWord, field: ({ record }) => record.vehicle.label },
  { header: messages.vehicleInLibrary, field: ({ record }) => record.vehicle.platformId },
  { header: messages.useWord, field: ({ record }) => record.vehicle.use },
  { header: messages.axleWord, field: ({ record }) => record.axle },
  { header: messages.sideWord, field: ({ side }) => side },
  { header: messages.layoutWord, field: ({ record }) => record.layout.kind },
  { header: messages.armMeasured, field: ({ record }) => armOf(record).armRole },
  { header: messages.stopFixedTo, field: ({ record }) => armOf(record).stopOn },
  { header: messages.nameWord, field: ({ record }) => record.author.name },
  { header: messages.roleWord, field: ({ record }) => record.author.role },
  { header: messages.contactWord, field: ({ record }) => record.author.contact },
  { header: messages.stopWord, field: ({ record }) => stopTitle(record.stop) },
  {
    header: messages.stopCurve,
    field: ({ record: { stop } }) =>
      stop.estimated
        ? messages.estimate({ estimateBand: estimateBand(stop.estimated) })
        : messages.testedWord,
  },
  { header: messages.stopPartNumber, field: ({ record }) => record.stop.partNumber },
  { header: messages.stopRevision, field: ({ record }) => record.stop.revision },
  { header: messages.stopBatch, field: ({ record }) => record.stop.batch },
  { header: messages.stopDuty, field: ({ record }) => record.stop.duty },
  { header: messages.deskState, field: ({ state }) => deskWords[state] },
  { header: messages.decidedBy, field: ({ decision }) => decision?.by },
  { header: messages.decidedUtc, field: ({ decision }) => decision?.at },
  { header: messages.deskNote, field: ({ decision }) => decision?.note },
  {
    header: messages.verdictWord,
    field: ({ assessment, submission }) => {
      const verdict = assessment?.verdict ?? submission.computed?.verdict;
      return verdict === undefined ? messages.notComputedYet : stateWords[verdict];
    },
  },
  {
    header: messages.reasonWord,
    field: ({ assessment, submission }) => assessment?.reason ?? submission.computed?.reason,
  },
  { header: messages.oddReadings, field: ({ submission }) => submission.computed?.odd },
];

const units: { readonly [Kind in ValueKind]?: string } = {
  length: "mm",
  angle: "deg",
  mass: "kg",
  rate: "N/mm",
  damping: "N·s/mm",
};

function sourceField(reading: TypedReading | undefined): TableCell {
  return reading && sourceWords[sourceOf(reading)];
}

function readingColumns(
  id: ReadingId | ValueName,
  find: (subject: TableSubject) => TypedReading | undefined,
): Column[] {
  const { name, kind } = catalogueEntry(id);
  const unit = units[kind] ?? "";
  const mean = (reading: TypedReading | undefined) => reading && meanOf(reading);
  return [
    { header: messages.valueOf({ name, unit }), field: (subject) => mean(find(subject)) },
    { header: messages.plusMinusOf({ name, unit }), field: (subject) => find(subject)?.tol },
    { header: messages.repeats({ name }), field: (subject) => find(subject)?.values.length },
    { header: messages.source({ name }), field: (subject) => sourceField(find(subject)) },
  ];
}

function cornerOf({ record, side }: TableSubject) {
  return record.corners.find((corner) => corner.side === side);
}

/** Limits differ from check to check: columns for the first few, and the rest in words. */
const limitsShown = 6;

function limitText({ kind, at, perWheel, reading }: CheckLimit): Message {
  const source = sourceOf(reading);
  return messages.limitTold({
    kind,
    meanOf: meanOf(reading),
    tol: reading.tol,
    at,
    isClosing: perWheel !== undefined,
    perWheel,
    isSaid: source !== "measured",
    source: sourceWords[source],
  });
}

const limits: readonly Column[] = [
  { header: messages.limitsMeasured, field: (subject) => cornerOf(subject)?.limits.length },
  ...Array.from({ length: limitsShown }, (_, index): Column[] => {
    const limit = (subject: TableSubject) => cornerOf(subject)?.limits[index];
    const name = messages.limit({ index: index + 1 });
    return [
      { header: name, field: (subject) => limit(subject)?.kind },
      { header: messages.measuredAt({ name }), field: (subject) => limit(subject)?.at },
      {
        header: messages.closingPerWheelTravel({ name }),
        field: (subject) => {
          const found = limit(subject);
          return found?.at === "wheel" ? (found.perWheel ?? 1) : null;
        },
      },
      {
        header: messages.clearanceMm({ name }),
        field: (subject) => {
          const reading = limit(subject)?.reading;
          return reading && meanOf(reading);
        },
      },
      { header: messages.clearanceMm2({ name }), field: (subject) => limit(subject)?.reading.tol },
      {
        header: messages.clearanceRepeats({ name }),
        field: (subject) => limit(subject)?.reading.values.length,
      },
      {
        header: messages.clearanceSource({ name }),
        field: (subject) => sourceField(limit(subject)?.reading),
      },
    ];
  }).flat(),
  {
    header: messages.furtherLimits,
    field: (subject) => {
      const further = cornerOf(subject)?.limits.slice(limitsShown);
      return further && semicolonList(further.map(limitText));
    },
  },
];

const readings: readonly Column[] = [
  ...geometryNames.flatMap((name) =>
    readingColumns(name, (subject) => {
      const shared: GeometryReadings = subject.record.layout.readings;
      return cornerOf(subject)?.geometry?.[name] ?? shared[name];
    }),
  ),
  ...cornerReadingNames
    .filter((name) => name !== "cornerMassKg")
    .flatMap((name) => readingColumns(`left.${name}`, (subject) => cornerOf(subject)?.[name])),
  {
    header: messages.valueOf({ name: settle.name, unit: "mm" }),
    field: (subject) => cornerOf(subject)?.settleMm,
  },
  ...limits,
  ...readingColumns("left.cornerMassKg", (subject) => cornerOf(subject)?.cornerMassKg),
  ...readingColumns("stop.freeHeight", ({ record }) => record.stop.freeHeight),
  { header: messages.liftMm, field: ({ record }) => record.vehicle.liftMm },
  { header: messages.usableCompressionMm, field: ({ record }) => record.stop.usableCompressionMm },
  ...rideQuantities.flatMap((name): Column[] => {
    const { name: words, kind } = rideReadings[name];
    const named = name === "payloadPerCornerKg" ? messages.payloadPerCorner : words;
    return [
      {
        header: messages.valueOf({ name: named, unit: units[kind] ?? "" }),
        field: ({ record }) => record.ride?.[name],
      },
      {
        header: messages.source2({ named }),
        field: ({ record: { ride } }) =>
          ride?.[name] === undefined ? null : (ride.estimated?.[name] ?? messages.asTyped),
      },
    ];
  }),
];

function figure(header: Message, value: (corner: CornerAssessment) => TableCell | boolean): Column {
  return {
    header,
    field: (_, corner) => {
      const found = corner === null ? null : value(corner);
      return typeof found === "boolean" ? (found ? messages.yesWord : messages.noWord) : found;
    },
  };
}

function intervalColumns(
  header: Message,
  value: (corner: CornerAssessment) => Interval | null,
): Column[] {
  return [
    figure(messages.n95FromMm({ header }), (corner) => value(corner)?.[0] ?? null),
    figure(messages.n95ToMm({ header }), (corner) => value(corner)?.[1] ?? null),
  ];
}

const checkWords: { readonly [Id in CheckId]: Message } = {
  clearance: messages.fullyCompressedBeforeHard,
  earlyContact: messages.stopDoesntTouchToo,
  stiffness: messages.stiffness,
  balance: messages.leftAndRightMatch,
  plausible: messages.readingsPlausible,
};

const figures: readonly Column[] = [
  figure(messages.linkageWord, ({ linkage }) => linkage),
  figure(messages.leverRatioWheelPer, ({ leverRatio }) => leverRatio),
  figure(messages.leverRatioAtFull, (corner) => corner.leverRatioAtFullStop),
  figure(messages.wheelTravelToContact, (corner) => corner.wheelTravelToContactMm),
  figure(messages.wheelTravelToFull, (corner) => corner.wheelTravelToFullStopMm),
  figure(messages.wheelTravelToHard, (corner) => corner.wheelTravelToHardLimitMm),
  figure(messages.hardContact, ({ hardLimit }) => hardLimit),
  figure(messages.freeShareOfTravel, ({ freeShare }) => freeShare),
  figure(messages.reserveMm, ({ reserveMm }) => reserveMm),
  figure(messages.extraHeightBySpacer, ({ spacerMm }) => spacerMm),
  figure(messages.extraHeightByTaller, ({ tallerMm }) => tallerMm),
  figure(messages.oneWheelLeverRatio, ({ oneWheel }) => oneWheel?.leverRatio),
  figure(messages.oneWheelTravelTo, (corner) => corner.oneWheel?.wheelTravelToContactMm),
  figure(messages.oneWheelTravelToFull, (corner) => corner.oneWheel?.wheelTravelToFullStopMm),
  figure(messages.secantRateOfStop, ({ secantRateNPerMm }) => secantRateNPerMm),
  figure(messages.stiffnessClassNMm, ({ stopRateClass }) => stopRateClass),
  figure(messages.progressiveWord, ({ progressive }) => progressive),
  figure(messages.suspensionTravelOnRoad, (corner) => corner.roadTravelSigmaMm),
  figure(messages.contactsAsMeasured1, ({ contactsPerKm }) => contactsPerKm),
  figure(messages.sagUnderLoadMm, ({ loadedSagMm }) => loadedSagMm),
  figure(messages.loadedTravelToContact, (corner) => corner.loadedTravelToContactMm),
  figure(messages.contactsLoaded1Km, ({ loadedContactsPerKm }) => loadedContactsPerKm),
  figure(messages.freeTravelNeededLoaded, ({ freeTravelNeededMm }) => freeTravelNeededMm),
  figure(messages.freeTravelNeededAs, (corner) => corner.freeTravelNeededUnladenMm),
  figure(messages.mostExtraHeightMm, ({ mostExtraHeightMm }) => mostExtraHeightMm),
  figure(messages.compressionUnderLoadMm, ({ loadedCompressionMm }) => loadedCompressionMm ?? null),
  figure(messages.leastClassThatWorks, ({ classWindow }) => classWindow?.[0] ?? null),
  figure(messages.greatestClassThatWorks, ({ classWindow }) => classWindow?.[1] ?? null),
  figure(messages.classesThatWorkN, ({ classesThatWork }) => classesThatWork?.join(" ") ?? null),
  ...intervalColumns(messages.travelToContact, ({ intervals }) => intervals.wheelTravelToContactMm),
  ...intervalColumns(messages.reserveWord, ({ intervals }) => intervals.reserveMm),
  figure(messages.probabilityOfEnoughReserve, ({ clearanceProbability }) => clearanceProbability),
  figure(messages.probabilityOfEnoughFree, (corner) => corner.earlyContactProbability),
  ...checkIds.map((id) =>
    figure(messages.checkOf({ check: checkWords[id] }), ({ checks }) => {
      const check = checks.find((each) => each.id === id);
      return check === undefined ? null : stateWords[check.state];
    }),
  ),
  figure(messages.greatestPartOfMargin, ({ doubt }) => {
    const [first] = doubt.reserve.length > 0 ? doubt.reserve : doubt.contact;
    return first === undefined
      ? null
      : messages.greatestPart({ reading: first.reading, percent: Math.round(100 * first.share) });
  }),
];

/** Events differ from check to check: columns for the first few. */
const eventsShown = 4;
const eventFigures = [
  [messages.wheelTravelMm, "peakWheelTravelMm"],
  [messages.stopCompressionMm, "peakCompressionMm"],
  [messages.stopForceN, "peakStopForceN"],
  [messages.accelerationG, "peakAccelerationG"],
  [messages.energyInJ, "energyInJ"],
  [messages.energyOutJ, "energyOutJ"],
  [messages.leaveSpeedMmS, "leaveSpeedMmPerS"],
  [messages.tireOffGroundMs, "tyreOffMs"],
  [messages.riseOfBodyMm, "bodyRiseMm"],
  [messages.fullCompressionPassed, "fullStop"],
  [messages.hardContact, "hardContact"],
] as const;
const events: readonly Column[] = Array.from({ length: eventsShown }, (_, index) => [
  figure(
    messages.eventWord({ index: index + 1 }),
    (corner) => corner.events?.[index]?.kind ?? null,
  ),
  ...eventFigures.map(([words, name]) =>
    figure(
      messages.eventWord2({ index: index + 1, words }),
      (corner) => corner.events?.[index]?.[name] ?? null,
    ),
  ),
]).flat();

const columns: readonly Column[] = [...about, ...readings, ...figures, ...events];

/** The names of the columns, each with its unit. */
export const tableHeader: readonly Message[] = columns.map(({ header }) => header);

/** One line of the table, before it is put into words: numbers in the units of the header. */
export function tableLine(subject: TableSubject): readonly TableCell[] {
  const corner = subject.assessment?.corners.find(({ side }) => side === subject.side) ?? null;
  return columns.map(({ field }) => field(subject, corner));
}

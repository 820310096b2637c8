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
import { inModelUnits } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
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
import type { CsvField } from "./csv.ts";
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
  readonly header: string;
  readonly field: (subject: TableSubject, corner: CornerAssessment | null) => CsvField;
}

const stateWords: { readonly [Each in State]: string } = {
  ok: "fits",
  care: "take care",
  no: "does not fit",
  unsure: "not sure",
};
const deskWords: { readonly [Each in DeskState]: string } = {
  new: "new",
  accepted: "accepted",
  askedAgain: "asked again",
  otherPart: "other part advised",
};

function armOf({ layout }: CheckRecord): PartialLayout {
  return layout;
}

const about: readonly Column[] = [
  { header: "check id", field: ({ record }) => record.id },
  { header: "version", field: ({ version }) => version },
  { header: "made (UTC)", field: ({ record }) => record.createdAt },
  { header: "received (UTC)", field: ({ submission }) => submission.receivedAt },
  { header: "job", field: ({ record }) => record.job?.label },
  { header: "job number", field: ({ record }) => record.job?.number },
  { header: "moment", field: ({ record }) => record.job?.moment },
  { header: "vehicle", field: ({ record }) => record.vehicle.label },
  { header: "platform", field: ({ record }) => record.vehicle.platformId },
  { header: "use", field: ({ record }) => record.vehicle.use },
  { header: "axle", field: ({ record }) => record.axle },
  { header: "side", field: ({ side }) => side },
  { header: "layout", field: ({ record }) => record.layout.kind },
  { header: "arm measured", field: ({ record }) => armOf(record).armRole },
  { header: "stop fixed to", field: ({ record }) => armOf(record).stopOn },
  { header: "name", field: ({ record }) => record.author.name },
  { header: "role", field: ({ record }) => record.author.role },
  { header: "contact", field: ({ record }) => record.author.contact },
  { header: "stop", field: ({ record }) => stopTitle(record.stop) },
  {
    header: "stop curve",
    field: ({ record: { stop } }) =>
      stop.estimated ? `estimate ${estimateBand(stop.estimated)}` : "tested",
  },
  { header: "stop part number", field: ({ record }) => record.stop.partNumber },
  { header: "stop revision", field: ({ record }) => record.stop.revision },
  { header: "stop batch", field: ({ record }) => record.stop.batch },
  { header: "stop duty", field: ({ record }) => record.stop.duty },
  { header: "desk state", field: ({ state }) => deskWords[state] },
  { header: "decided by", field: ({ decision }) => decision?.by },
  { header: "decided (UTC)", field: ({ decision }) => decision?.at },
  { header: "desk note", field: ({ decision }) => decision?.note },
  {
    header: "verdict",
    field: ({ assessment, submission }) => {
      const verdict = assessment?.verdict ?? submission.computed?.verdict;
      return verdict === undefined ? "not computed yet" : stateWords[verdict];
    },
  },
  {
    header: "reason",
    field: ({ assessment, submission }) => {
      const reason = assessment?.reason ?? submission.computed?.reason;
      return reason === undefined ? null : inModelUnits(reason);
    },
  },
  { header: "odd readings", field: ({ submission }) => submission.computed?.odd },
];

const units: { readonly [Kind in ValueKind]?: string } = {
  length: "mm",
  angle: "deg",
  mass: "kg",
  rate: "N/mm",
  damping: "N·s/mm",
};

function sourceField(reading: TypedReading | undefined): CsvField {
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
    { header: `${name} (${unit})`, field: (subject) => mean(find(subject)) },
    { header: `${name} ± (${unit})`, field: (subject) => find(subject)?.tol },
    { header: `${name} repeats`, field: (subject) => find(subject)?.values.length },
    { header: `${name} source`, field: (subject) => sourceField(find(subject)) },
  ];
}

function cornerOf({ record, side }: TableSubject) {
  return record.corners.find((corner) => corner.side === side);
}

/** Limits differ from check to check: columns for the first few, and the rest in words. */
const limitsShown = 6;

function limitText({ kind, at, perWheel, reading }: CheckLimit): string {
  const closing = perWheel === undefined ? "" : `, closing ${perWheel} mm/mm`;
  const source = sourceOf(reading);
  const said = source === "measured" ? "" : `, ${sourceWords[source]}`;
  return `${kind} ${meanOf(reading)} ± ${reading.tol} mm at the ${at}${closing}${said}`;
}

const limits: readonly Column[] = [
  { header: "limits measured", field: (subject) => cornerOf(subject)?.limits.length },
  ...Array.from({ length: limitsShown }, (_, index): Column[] => {
    const limit = (subject: TableSubject) => cornerOf(subject)?.limits[index];
    const name = `limit ${index + 1}`;
    return [
      { header: name, field: (subject) => limit(subject)?.kind },
      { header: `${name}: measured at`, field: (subject) => limit(subject)?.at },
      {
        header: `${name}: closing per wheel travel (mm/mm)`,
        field: (subject) => {
          const found = limit(subject);
          return found?.at === "wheel" ? (found.perWheel ?? 1) : null;
        },
      },
      {
        header: `${name}: clearance (mm)`,
        field: (subject) => {
          const reading = limit(subject)?.reading;
          return reading && meanOf(reading);
        },
      },
      { header: `${name}: clearance ± (mm)`, field: (subject) => limit(subject)?.reading.tol },
      {
        header: `${name}: clearance repeats`,
        field: (subject) => limit(subject)?.reading.values.length,
      },
      {
        header: `${name}: clearance source`,
        field: (subject) => sourceField(limit(subject)?.reading),
      },
    ];
  }).flat(),
  {
    header: "further limits",
    field: (subject) => cornerOf(subject)?.limits.slice(limitsShown).map(limitText).join("; "),
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
  { header: `${settle.name} (mm)`, field: (subject) => cornerOf(subject)?.settleMm },
  ...limits,
  ...readingColumns("left.cornerMassKg", (subject) => cornerOf(subject)?.cornerMassKg),
  ...readingColumns("stop.freeHeight", ({ record }) => record.stop.freeHeight),
  { header: "lift (mm)", field: ({ record }) => record.vehicle.liftMm },
  { header: "usable compression (mm)", field: ({ record }) => record.stop.usableCompressionMm },
  ...rideQuantities.flatMap((name): Column[] => {
    const { name: words, kind } = rideReadings[name];
    const named = name === "payloadPerCornerKg" ? "payload per corner" : words;
    return [
      {
        header: `${named} (${units[kind] ?? ""})`,
        field: ({ record }) => record.ride?.[name],
      },
      {
        header: `${named} source`,
        field: ({ record: { ride } }) =>
          ride?.[name] === undefined ? null : (ride.estimated?.[name] ?? "as typed"),
      },
    ];
  }),
];

function figure(header: string, value: (corner: CornerAssessment) => CsvField | boolean): Column {
  return {
    header,
    field: (_, corner) => {
      const found = corner === null ? null : value(corner);
      return typeof found === "boolean" ? (found ? "yes" : "no") : found;
    },
  };
}

function intervalColumns(
  header: string,
  value: (corner: CornerAssessment) => Interval | null,
): Column[] {
  return [
    figure(`${header}, 95 % from (mm)`, (corner) => value(corner)?.[0] ?? null),
    figure(`${header}, 95 % to (mm)`, (corner) => value(corner)?.[1] ?? null),
  ];
}

const checkIds: readonly CheckId[] = [
  "clearance",
  "earlyContact",
  "stiffness",
  "balance",
  "plausible",
];
const checkWords: { readonly [Id in CheckId]: string } = {
  clearance: "fully compressed before hard contact",
  earlyContact: "stop doesn't touch too soon",
  stiffness: "stiffness",
  balance: "left and right match",
  plausible: "readings plausible",
};

const figures: readonly Column[] = [
  figure("linkage", ({ linkage }) => linkage),
  figure("lever ratio (wheel per stop)", ({ leverRatio }) => leverRatio),
  figure(
    "lever ratio at full compression (wheel per stop)",
    (corner) => corner.leverRatioAtFullStop,
  ),
  figure("wheel travel to contact (mm)", (corner) => corner.wheelTravelToContactMm),
  figure("wheel travel to full compression (mm)", (corner) => corner.wheelTravelToFullStopMm),
  figure("wheel travel to hard contact (mm)", (corner) => corner.wheelTravelToHardLimitMm),
  figure("hard contact", ({ hardLimit }) => hardLimit),
  figure("free share of the travel (1)", ({ freeShare }) => freeShare),
  figure("reserve (mm)", ({ reserveMm }) => reserveMm),
  figure("extra height by a spacer (mm)", ({ spacerMm }) => spacerMm),
  figure("extra height by a taller stop (mm)", ({ tallerMm }) => tallerMm),
  figure("one wheel: lever ratio (wheel per stop)", ({ oneWheel }) => oneWheel?.leverRatio),
  figure("one wheel: travel to contact (mm)", (corner) => corner.oneWheel?.wheelTravelToContactMm),
  figure(
    "one wheel: travel to full compression (mm)",
    (corner) => corner.oneWheel?.wheelTravelToFullStopMm,
  ),
  figure("secant rate of the stop (N/mm)", ({ secantRateNPerMm }) => secantRateNPerMm),
  figure("stiffness class (N/mm)", ({ stopRateClass }) => stopRateClass),
  figure("progressive", ({ progressive }) => progressive),
  figure("suspension travel on the road, sigma (mm)", (corner) => corner.roadTravelSigmaMm),
  figure("contacts as measured (1/km)", ({ contactsPerKm }) => contactsPerKm),
  figure("sag under load (mm)", ({ loadedSagMm }) => loadedSagMm),
  figure("loaded travel to contact (mm)", (corner) => corner.loadedTravelToContactMm),
  figure("contacts loaded (1/km)", ({ loadedContactsPerKm }) => loadedContactsPerKm),
  figure("free travel needed loaded (mm)", ({ freeTravelNeededMm }) => freeTravelNeededMm),
  figure("free travel needed as measured (mm)", (corner) => corner.freeTravelNeededUnladenMm),
  figure("most extra height (mm)", ({ mostExtraHeightMm }) => mostExtraHeightMm),
  figure("compression under load (mm)", ({ loadedCompressionMm }) => loadedCompressionMm ?? null),
  figure("least class that works (N/mm)", ({ classWindow }) => classWindow?.[0] ?? null),
  figure("greatest class that works (N/mm)", ({ classWindow }) => classWindow?.[1] ?? null),
  figure("classes that work (N/mm)", ({ classesThatWork }) => classesThatWork?.join(" ") ?? null),
  ...intervalColumns("travel to contact", ({ intervals }) => intervals.wheelTravelToContactMm),
  ...intervalColumns("reserve", ({ intervals }) => intervals.reserveMm),
  figure("probability of enough reserve (1)", ({ clearanceProbability }) => clearanceProbability),
  figure("probability of enough free travel (1)", (corner) => corner.earlyContactProbability),
  ...checkIds.map((id) =>
    figure(`check: ${checkWords[id]}`, ({ checks }) => {
      const check = checks.find((each) => each.id === id);
      return check === undefined ? null : stateWords[check.state];
    }),
  ),
  figure("greatest part of the margin of error", ({ doubt }) => {
    const [first] = doubt.reserve.length > 0 ? doubt.reserve : doubt.contact;
    return first === undefined ? null : `${first.reading} ${Math.round(100 * first.share)} %`;
  }),
];

/** Events differ from check to check: columns for the first few. */
const eventsShown = 4;
const eventFigures = [
  ["wheel travel (mm)", "peakWheelTravelMm"],
  ["stop compression (mm)", "peakCompressionMm"],
  ["stop force (N)", "peakStopForceN"],
  ["acceleration (g)", "peakAccelerationG"],
  ["energy in (J)", "energyInJ"],
  ["energy out (J)", "energyOutJ"],
  ["leave speed (mm/s)", "leaveSpeedMmPerS"],
  ["tire off the ground (ms)", "tyreOffMs"],
  ["rise of the body (mm)", "bodyRiseMm"],
  ["full compression passed", "fullStop"],
  ["hard contact", "hardContact"],
] as const;
const events: readonly Column[] = Array.from({ length: eventsShown }, (_, index) => [
  figure(`event ${index + 1}`, (corner) => corner.events?.[index]?.kind ?? null),
  ...eventFigures.map(([words, name]) =>
    figure(`event ${index + 1}: ${words}`, (corner) => corner.events?.[index]?.[name] ?? null),
  ),
]).flat();

const columns: readonly Column[] = [...about, ...readings, ...figures, ...events];

/** The names of the columns, each with its unit. */
export const tableHeader: readonly string[] = columns.map(({ header }) => header);

/** One line of the table: numbers in the units of the header. */
export function tableLine(subject: TableSubject): CsvField[] {
  const corner = subject.assessment?.corners.find(({ side }) => side === subject.side) ?? null;
  return columns.map(({ field }) => field(subject, corner));
}

import type { Fault, FieldPath } from "../../physics/outcome.ts";
import {
  cornerReadingNames,
  geometryNames,
  layoutReadingsInOrder,
  layoutRegistry,
  limitOf,
  type ReadingId,
  rideQuantities,
  ruleValueNames,
  standingNames,
} from "../../physics/readings/index.ts";
import { capital, type Sentence } from "../../physics/sentence.ts";
import { catalogueEntry, entryName } from "../entry/readingCatalogue.ts";
import type { CheckStop, PartialCheckRecord, PartialCorner, TypedReading } from "./checkRecord.ts";
import { fullTravelFaults } from "./fullTravelRules.ts";
import { lackingGeometry } from "./geometryGiven.ts";

/** What of a record is judged: a pack's platform or rules have no more than this either. */
export type JudgedParts = Pick<
  PartialCheckRecord,
  "corners" | "layout" | "stop" | "ride" | "rules" | "fullTravel"
>;

/** One fault of a record: the field's id, and the sentence that begins with its plain name. */
function fault(code: string, id: FieldPath, sentence: Sentence): Fault {
  return { code, sentence, reading: id };
}

/** "The left gap": how a fault's sentence names a field. */
export function fieldTitle(record: JudgedParts, id: FieldPath): string {
  const place = limitOf(id);
  const corner = record.corners.find(({ side }) => side === place?.side);
  return `The ${entryName(id, corner?.limits[place?.index ?? -1]?.kind)}`;
}

function readingFaults(record: JudgedParts, id: ReadingId, reading: TypedReading): Fault[] {
  const { kind, allowed } = catalogueEntry(id);
  const title = fieldTitle(record, id);
  if (allowed === "aboveZero" && reading.values.some((value) => value <= 0)) {
    return [fault("notAboveZero", id, [`${title}: every value must be more than 0.`])];
  }
  if (allowed === "zeroOrMore" && reading.values.some((value) => value < 0)) {
    return [fault("negative", id, [`${title}: no value can be below 0.`])];
  }
  if (kind === "angle" && reading.values.some((value) => Math.abs(value) >= 90)) {
    return [fault("angleTooLarge", id, [`${title}: an angle here is less than 90° either way.`])];
  }
  return [];
}

function numberFaults(id: ReadingId, value: number | undefined): Fault[] {
  if (value === undefined) return [];
  const { allowed, name } = catalogueEntry(id);
  const title = `The ${name}`;
  if (allowed === "aboveZero" && value <= 0) {
    return [fault("notAboveZero", id, [`${title} must be more than 0.`])];
  }
  if (allowed === "zeroOrMore" && value < 0) {
    return [fault("negative", id, [`${title} cannot be below 0.`])];
  }
  return [];
}

/** What must hold between the numbers of a stop. */
export function stopFaults(stop: Partial<CheckStop>): Fault[] {
  const faults = numberFaults("stop.usableCompressionMm", stop.usableCompressionMm);
  if (stop.freeHeight?.values.some((value) => value <= 0) === true) {
    faults.push(
      fault("notAboveZero", "stop.freeHeight", [
        "The free height of the stop: every value must be more than 0.",
      ]),
    );
  }
  const heights = stop.freeHeight?.values ?? [];
  const height = heights.reduce((sum, value) => sum + value, 0) / Math.max(1, heights.length);
  if (
    stop.usableCompressionMm !== undefined &&
    heights.length > 0 &&
    stop.usableCompressionMm >= height
  ) {
    faults.push(
      fault("usableAboveHeight", "stop.usableCompressionMm", [
        "The usable compression of the stop must be less than its free height.",
      ]),
    );
  }
  faults.push(...curveFaults(stop.curve ?? []), ...dampingFaults(stop), ...speedFaults(stop));
  return faults;
}

/** What only a test at speed can show stands only with one, and within what can be. */
function speedFaults(stop: Partial<CheckStop>): Fault[] {
  const { restLoss, staticShare, branches, testDoubt } = stop;
  const faults: Fault[] = [];
  const known = [
    ["stop.restLoss", "rest loss", restLoss],
    ["stop.staticShare", "static share", staticShare],
    ["stop.branches", "branches", branches],
    ["stop.testDoubt", "± of the test", testDoubt],
  ] as const;
  for (const [id, words, value] of known) {
    if (value !== undefined && stop.testedAtSpeed !== true) {
      faults.push(
        fault("lossUntested", id, [
          `The ${words} of the stop is there, and the stop is not marked as tested at speed. Only such a test can show it.`,
        ]),
      );
    }
  }
  if (staticShare !== undefined && (staticShare <= 0 || staticShare > 1)) {
    faults.push(
      fault("shareOutside", "stop.staticShare", [
        "The static share of the stop must be more than 0 and not more than 1.",
      ]),
    );
  }
  if (restLoss !== undefined && restLoss >= (staticShare ?? 1)) {
    faults.push(
      fault("lossTooLarge", "stop.restLoss", [
        "The rest loss of the stop must be less than the share of its force that remains at rest.",
      ]),
    );
  }
  if (branches?.some(({ tauS }) => tauS <= 0) === true) {
    faults.push(
      fault("notAboveZero", "stop.branches", [
        "The branches of the stop: every relaxation time must be more than 0.",
      ]),
    );
  }
  return faults;
}

function curveFaults(curve: readonly (readonly [number, number])[]): Fault[] {
  let last: readonly [number, number] = [0, 0];
  for (const [index, point] of curve.entries()) {
    const origin = index === 0 && point[0] === 0 && point[1] === 0 && curve.length > 1;
    if (!origin && (point[0] <= last[0] || point[1] <= last[1])) {
      const column = point[0] <= last[0] ? "depth" : "force";
      const before = index === 0 ? "0" : "the point before it";
      return [
        fault("curveNotRising", "stop.curve", [
          `The force curve of the stop: the ${column} of point ${index + 1} is not above ${before}. Every point must lie deeper and push harder than the one before.`,
        ]),
      ];
    }
    last = point;
  }
  return [];
}

function dampingFaults(stop: Partial<CheckStop>): Fault[] {
  const damping = stop.damping ?? null;
  if (damping === null) return [];
  if (stop.testedAtSpeed !== true) {
    return [
      fault("dampingUntested", "stop.damping", [
        "The damping of the stop: there is damping, but the stop is not marked as tested at speed. Damping comes only from tests at speed.",
      ]),
    ];
  }
  for (const [index, [depth, compressing, rebounding]] of damping.entries()) {
    const before = damping[index - 1]?.[0] ?? Number.NEGATIVE_INFINITY;
    if (depth < 0 || depth <= before) {
      return [
        fault("dampingNotRising", "stop.damping", [
          `The damping of the stop: the depth of row ${index + 1} is not above the row before it.`,
        ]),
      ];
    }
    if (compressing < 0 || rebounding < 0) {
      return [
        fault("dampingNegative", "stop.damping", [
          `The damping of the stop: row ${index + 1} has a value below 0.`,
        ]),
      ];
    }
  }
  return [];
}

/**
 * What must hold of a record beyond its shape: lengths above 0, a rising curve, sides that differ.
 * Works on a part of a record too, so that a half-filled check and a file are judged by the same rules.
 */
export function recordFaults(record: JudgedParts): Fault[] {
  const faults: Fault[] = layoutFaults(record);
  for (const corner of record.corners) faults.push(...cornerFaults(record, corner));
  const sides = record.corners.map((corner) => corner.side);
  if (new Set(sides).size < sides.length) {
    faults.push(
      fault("sidesEqual", "corners", [
        `The corners: both are marked ${sides[0] ?? "left"}. One must be left and the other right.`,
      ]),
    );
  }
  faults.push(...stopFaults(record.stop ?? {}));
  for (const name of rideQuantities) {
    faults.push(...numberFaults(`ride.${name}`, record.ride?.[name]));
  }
  for (const name of rideQuantities) {
    if ((record.ride?.tolerances?.[name] ?? 0) < 0) {
      faults.push(
        fault("negative", `ride.${name}`, [
          `${capital(`the ${catalogueEntry(name).name}`)}: its ± cannot be below 0.`,
        ]),
      );
    }
  }
  return [...faults, ...fullTravelFaults(record), ...rulesFaults(record)];
}

function layoutFaults(record: JudgedParts): Fault[] {
  const { kind, readings, wheelPerOuter, wheelPerOuterTol } = record.layout ?? {};
  const faults: Fault[] = [];
  for (const name of kind === undefined ? [] : layoutReadingsInOrder[kind]) {
    const reading = readings?.[name];
    if (reading !== undefined) faults.push(...readingFaults(record, name, reading));
  }
  faults.push(...numberFaults("layout.wheelPerOuter", wheelPerOuter));
  if ((wheelPerOuterTol ?? 0) >= (wheelPerOuter ?? Number.POSITIVE_INFINITY)) {
    faults.push(
      fault("toleranceTooLarge", "layout.wheelPerOuterTol", [
        "The wheel travel per travel of the outer joint: its ± must be less than the value itself.",
      ]),
    );
  }
  return faults;
}

function cornerFaults(record: JudgedParts, corner: PartialCorner): Fault[] {
  const { side, geometry = {}, limits } = corner;
  const faults: Fault[] = [];
  const look = (id: ReadingId, reading: TypedReading | undefined): void => {
    if (reading !== undefined) faults.push(...readingFaults(record, id, reading));
  };
  for (const name of cornerReadingNames) look(`${side}.${name}`, corner[name]);
  for (const name of geometryNames) look(`${side}.${name}`, geometry[name]);
  const [first, second] = standingNames.filter((name) => corner[name] !== undefined);
  if (first !== undefined && second !== undefined) {
    const [one, other] = [catalogueEntry(first).name, catalogueEntry(second).name];
    faults.push(
      fault("standingTwice", `${side}.${second}`, [
        `The ${side} side has both the ${one} and the ${other}. The stop stands in one way only: keep the one that holds.`,
      ]),
    );
  }
  limits.forEach((limit, index) => {
    const id = `${side}.limits.${index}` as const;
    look(id, limit.reading);
    look(`${id}.distance`, limit.distance);
    faults.push(...numberFaults(`${id}.perWheel`, limit.perWheel));
    const kind = record.layout?.kind;
    if (limit.at === "arm" && kind !== undefined && !layoutRegistry[kind].onArm) {
      faults.push(
        fault("limitWithoutArm", id, [
          `${fieldTitle(record, id)} is marked as measured on the arm, and this layout has no arm. Say whether it was measured at the wheel or at the stop.`,
        ]),
      );
    }
  });
  return faults;
}

/**
 * What a record lacks of its layout although the shape allows it to be absent: lengths, each of which may
 * also be made of others, or stand at each side.
 */
export function absentFaults(record: JudgedParts): Fault[] {
  return lackingGeometry(record).map((name) =>
    fault("fieldFault", name, [`${fieldTitle(record, name)}: is missing.`]),
  );
}

function rulesFaults(record: JudgedParts): Fault[] {
  const { events = [] } = record.rules ?? {};
  const faults = ruleValueNames.flatMap((name) =>
    numberFaults(`rules.${name}`, record.rules?.[name]),
  );
  events.forEach((event, index) => {
    const sizes =
      event.kind === "landing"
        ? [event.heightM]
        : [event.heightM, event.lengthM, event.speedKmPerH];
    if (sizes.some((size) => size <= 0)) {
      faults.push(
        fault("notAboveZero", "rules.events", [
          `The rules: event ${index + 1} has a height, length or speed that is not more than 0.`,
        ]),
      );
    }
  });
  return faults;
}

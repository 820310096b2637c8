import type { Fault } from "../../physics/outcome.ts";
import type { Sentence } from "../../physics/sentence.ts";
import { catalogueEntry, entryName } from "../entry/readingCatalogue.ts";
import {
  type CheckStop,
  layoutReadingNames,
  type PartialCheckRecord,
  type TypedReading,
} from "./checkRecord.ts";

/** One fault of a record: the field's id, and the sentence that begins with its plain name. */
function fault(code: string, id: string, sentence: Sentence): Fault {
  return { code, sentence, reading: id };
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "The left gap": how a fault's sentence names a field. */
export function fieldTitle(record: PartialCheckRecord, id: string): string {
  const match = /^(left|right)\.limits\.(\d+)/.exec(id);
  const limit = record.corners.find((corner) => corner.side === match?.[1])?.limits[
    Number(match?.[2] ?? -1)
  ];
  return `The ${entryName(id, limit?.kind)}`;
}

function readingFaults(record: PartialCheckRecord, id: string, reading: TypedReading): Fault[] {
  const { kind, allowed } = catalogueEntry(id);
  const title = fieldTitle(record, id);
  if (allowed === "aboveZero" && reading.values.some((value) => value <= 0)) {
    return [fault("notAboveZero", id, [`${title}: every value must be more than 0.`])];
  }
  if (kind === "angle" && reading.values.some((value) => Math.abs(value) >= 90)) {
    return [fault("angleTooLarge", id, [`${title}: an angle here is less than 90° either way.`])];
  }
  return [];
}

function numberFaults(id: string, value: number | undefined): Fault[] {
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
  faults.push(...curveFaults(stop.curve ?? []), ...dampingFaults(stop));
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
export function recordFaults(record: PartialCheckRecord): Fault[] {
  const faults: Fault[] = [];
  const kind = record.layout?.kind;
  const names =
    kind === undefined
      ? []
      : [...layoutReadingNames[kind].needed, ...layoutReadingNames[kind].optional];
  for (const name of names) {
    const reading = record.layout?.readings?.[name];
    if (reading !== undefined) faults.push(...readingFaults(record, name, reading));
  }
  faults.push(...numberFaults("layout.wheelPerOuter", record.layout?.wheelPerOuter));
  for (const corner of record.corners) {
    const readings = { gap: corner.gap, rideHeight: corner.rideHeight, ...corner.geometry };
    for (const [name, reading] of Object.entries({
      ...readings,
      cornerMassKg: corner.cornerMassKg,
    })) {
      if (reading !== undefined) {
        faults.push(...readingFaults(record, `${corner.side}.${name}`, reading));
      }
    }
    corner.limits.forEach((limit, index) => {
      const id = `${corner.side}.limits.${index}`;
      if (limit.reading !== undefined) faults.push(...readingFaults(record, id, limit.reading));
      faults.push(...numberFaults(`${id}.perWheel`, limit.perWheel));
    });
  }
  const sides = record.corners.map((corner) => corner.side);
  if (new Set(sides).size < sides.length) {
    faults.push(
      fault("sidesEqual", "corners", [
        `The corners: both are marked ${sides[0] ?? "left"}. One must be left and the other right.`,
      ]),
    );
  }
  faults.push(...stopFaults(record.stop ?? {}));
  const { tolerances, estimated: _, ...quantities } = record.ride ?? {};
  for (const [name, value] of Object.entries(quantities)) {
    if (typeof value === "number") faults.push(...numberFaults(`ride.${name}`, value));
  }
  for (const [name, value] of Object.entries(tolerances ?? {})) {
    if (value < 0) {
      faults.push(
        fault("negative", `ride.${name}`, [
          `${capitalised(`the ${catalogueEntry(name).name}`)}: its ± cannot be below 0.`,
        ]),
      );
    }
  }
  return [...faults, ...rulesFaults(record)];
}

function rulesFaults(record: PartialCheckRecord): Fault[] {
  const { events = [], ...numbers } = record.rules ?? {};
  const faults: Fault[] = [];
  for (const [name, value] of Object.entries(numbers)) {
    if (typeof value === "number") faults.push(...numberFaults(`rules.${name}`, value));
  }
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

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
  withoutSide,
} from "../../physics/readings/index.ts";
import { capital, type Message, type Sentence } from "../../physics/sentence.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/check.ts";
import { catalogueEntry, entryName } from "../entry/readingCatalogue.ts";
import type { CheckStop, PartialCheckRecord, PartialCorner, TypedReading } from "./checkRecord.ts";
import { fullTravelFaults } from "./fullTravelRules.ts";
import { lackingGeometry } from "./geometryGiven.ts";

/** What of a record is judged: a pack's platform or rules have no more than this either. */
export type JudgedParts = Pick<
  PartialCheckRecord,
  "corners" | "layout" | "stop" | "ride" | "rules" | "fullTravel"
> & {
  /** False: a platform's, whose corner stands for both sides. */
  readonly hasSides?: boolean;
};

/** One fault of a record: the field's id, and the sentence that begins with its plain name. */
function fault(code: string, id: FieldPath, sentence: Sentence): Fault {
  return { code, sentence, reading: id };
}

/** "The left gap": how a fault's sentence names a field. */
export function fieldTitle(record: JudgedParts, id: FieldPath): Message {
  const place = limitOf(id);
  const corner = record.corners.find(({ side }) => side === place?.side);
  const named = record.hasSides === false ? withoutSide(id) : id;
  return messages.the({ entryName: entryName(named, corner?.limits[place?.index ?? -1]?.kind) });
}

function readingFaults(record: JudgedParts, id: ReadingId, reading: TypedReading): Fault[] {
  const { kind, allowed } = catalogueEntry(id);
  const title = fieldTitle(record, id);
  if (allowed === "aboveZero" && reading.values.some((value) => value <= 0)) {
    return [fault("notAboveZero", id, [messages.everyValueMustBe({ title })])];
  }
  if (allowed === "zeroOrMore" && reading.values.some((value) => value < 0)) {
    return [fault("negative", id, [messages.noValueCanBe({ title })])];
  }
  if (kind === "angle" && reading.values.some((value) => Math.abs(value) >= 90)) {
    return [fault("angleTooLarge", id, [messages.angleHereIsLess({ title })])];
  }
  return [];
}

function numberFaults(id: ReadingId, value: number | undefined): Fault[] {
  if (value === undefined) return [];
  const { allowed, name } = catalogueEntry(id);
  const title = messages.the2({ name });
  if (allowed === "aboveZero" && value <= 0) {
    return [fault("notAboveZero", id, [messages.mustBeMoreThan({ title })])];
  }
  if (allowed === "zeroOrMore" && value < 0) {
    return [fault("negative", id, [messages.cannotBeBelow0({ title })])];
  }
  return [];
}

/** What must hold between the numbers of a stop. */
export function stopFaults(stop: Partial<CheckStop>): Fault[] {
  const faults = numberFaults("stop.usableCompressionMm", stop.usableCompressionMm);
  if (stop.freeHeight?.values.some((value) => value <= 0) === true) {
    faults.push(fault("notAboveZero", "stop.freeHeight", [messages.freeHeightOfStop]));
  }
  const heights = stop.freeHeight?.values ?? [];
  if (
    stop.usableCompressionMm !== undefined &&
    heights.length > 0 &&
    stop.usableCompressionMm >= mean(heights)
  ) {
    faults.push(
      fault("usableAboveHeight", "stop.usableCompressionMm", [messages.usableCompressionOfStop]),
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
    ["stop.restLoss", messages.restLoss, restLoss],
    ["stop.staticShare", messages.staticShare, staticShare],
    ["stop.branches", messages.branches, branches],
    ["stop.testDoubt", messages.ofTest, testDoubt],
  ] as const;
  for (const [id, words, value] of known) {
    if (value !== undefined && stop.testedAtSpeed !== true) {
      faults.push(fault("lossUntested", id, [messages.ofStopIsThere({ words })]));
    }
  }
  if (staticShare !== undefined && (staticShare <= 0 || staticShare > 1)) {
    faults.push(fault("shareOutside", "stop.staticShare", [messages.staticShareOfStop]));
  }
  if (restLoss !== undefined && restLoss >= (staticShare ?? 1)) {
    faults.push(fault("lossTooLarge", "stop.restLoss", [messages.restLossOfStop]));
  }
  if (branches?.some(({ tauS }) => tauS <= 0) === true) {
    faults.push(fault("notAboveZero", "stop.branches", [messages.branchesOfStopEvery]));
  }
  return faults;
}

function curveFaults(curve: readonly (readonly [number, number])[]): Fault[] {
  let last: readonly [number, number] = [0, 0];
  for (const [index, point] of curve.entries()) {
    const origin = index === 0 && point[0] === 0 && point[1] === 0 && curve.length > 1;
    if (!origin && (point[0] <= last[0] || point[1] <= last[1])) {
      const column = point[0] <= last[0] ? "depth" : "force";
      const before = index === 0 ? "0" : messages.pointBeforeIt;
      return [
        fault("curveNotRising", "stop.curve", [
          messages.forceCurveOfStop({ column, index: index + 1, before }),
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
    return [fault("dampingUntested", "stop.damping", [messages.dampingOfStopThere])];
  }
  for (const [index, [depth, compressing, rebounding]] of damping.entries()) {
    const before = damping[index - 1]?.[0] ?? Number.NEGATIVE_INFINITY;
    if (depth < 0 || depth <= before) {
      return [
        fault("dampingNotRising", "stop.damping", [
          messages.dampingOfStopDepth({ index: index + 1 }),
        ]),
      ];
    }
    if (compressing < 0 || rebounding < 0) {
      return [
        fault("dampingNegative", "stop.damping", [messages.dampingOfStopRow({ index: index + 1 })]),
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
        messages.cornersBothAreMarked({ sides: sides[0] ?? "left" }),
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
          messages.itsCannotBeBelow({
            name: capital(messages.the3({ name: catalogueEntry(name).name })),
          }),
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
      fault("toleranceTooLarge", "layout.wheelPerOuterTol", [messages.wheelTravelPerTravel]),
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
      fault("standingTwice", `${side}.${second}`, [messages.sideHasBothAnd({ side, one, other })]),
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
          messages.isMarkedAsMeasured({ fieldTitle: fieldTitle(record, id) }),
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
    fault("fieldFault", name, [messages.isMissing({ fieldTitle: fieldTitle(record, name) })]),
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
        fault("notAboveZero", "rules.events", [messages.rulesEventHasHeight({ index: index + 1 })]),
      );
    }
  });
  return faults;
}

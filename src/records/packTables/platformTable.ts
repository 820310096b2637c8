import type { GeometryReadingName, LayoutKind, RideQuantity } from "../../physics/fitment.ts";
import {
  layoutReadingsInOrder,
  layoutRegistry,
  rideQuantities,
} from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/packTables.ts";
import type { CheckLayout, CheckLimit, Platform, TypedReading } from "../check/checkRecord.ts";
import { platformReadings } from "../check/recordFormat.ts";
import { catalogueEntry } from "../entry/readingCatalogue.ts";
import { plainNumber, stopOfPart } from "../pack/packCandidates.ts";
import { layoutNames, mountOfRow } from "./mountColumns.ts";
import { type ReadingColumn, readingHeadings } from "./readingHeadings.ts";
import { freeId, type StopRows } from "./stopTable.ts";
import type { Row, Table } from "./tableRows.ts";

const roles = {
  lower: "lower",
  upper: "upper",
  "under strut": "underStrut",
  "carries wheel": "carriesWheel",
} as const;
const carriers = { frame: "frame", arm: "arm" } as const;
const axles = { front: "front", rear: "rear" } as const;

const limits = [
  { column: "tire clearance", kind: "tyre", at: "wheel" },
  { column: "shock travel left", kind: "damper", at: "stop" },
  { column: "spring travel left", kind: "spring", at: "wheel" },
  { column: "metal clearance", kind: "metal", at: "wheel" },
] as const satisfies readonly ({ readonly column: string } & Pick<CheckLimit, "kind" | "at">)[];

function readingOf(row: Row, name: ReadingColumn): TypedReading | undefined {
  const { kind, allowed, usualTolerance } = catalogueEntry(name);
  const column = readingHeadings[name];
  const value = row.number(column, { kind, allowed });
  const tol = row.number(column, { kind, allowed: "zeroOrMore", isTolerance: true });
  return value === undefined ? undefined : { values: [value], tol: tol ?? usualTolerance };
}

const allGeometry = [...new Set(Object.values(layoutReadingsInOrder).flat())];

function layoutOf(row: Row, kind: LayoutKind): CheckLayout {
  const own: readonly string[] = layoutReadingsInOrder[kind];
  const readings: { [Name in GeometryReadingName]?: TypedReading } = {};
  for (const name of allGeometry) {
    const reading = readingOf(row, name);
    if (reading === undefined) continue;
    if (own.includes(name)) readings[name] = reading;
    else row.fault(readingHeadings[name], messages.layoutOfKindHas({ kind }));
  }
  const role = row.choice("arm measured", roles);
  const stopOn = row.choice("stop fixed to", carriers);
  const ratio = row.number("wheel travel per joint travel", { kind: "number" });
  const { onArm, saysStopOn } = layoutRegistry[kind];
  return {
    kind,
    ...(onArm && role !== undefined && { armRole: role }),
    ...(saysStopOn && stopOn !== undefined && { stopOn }),
    ...(ratio !== undefined && { wheelPerOuter: ratio }),
    readings,
  } as CheckLayout;
}

function rideOf(row: Row): Platform["ride"] {
  const values: { [Name in RideQuantity]?: number } = {};
  const tolerances: { [Name in RideQuantity]?: number } = {};
  for (const name of rideQuantities) {
    const { kind, allowed } = catalogueEntry(`ride.${name}`);
    const column = readingHeadings[`ride.${name}`];
    const value = row.number(column, { kind, allowed });
    const tol = row.number(column, { kind, allowed: "zeroOrMore", isTolerance: true });
    if (value !== undefined) values[name] = value;
    if (value !== undefined && tol !== undefined) tolerances[name] = tol;
  }
  if (Object.keys(values).length === 0) return undefined;
  return { ...values, ...(Object.keys(tolerances).length > 0 && { tolerances }) };
}

function limitsOf(row: Row): readonly CheckLimit[] {
  return limits.flatMap(({ column, kind, at }): CheckLimit[] => {
    const value = row.number(column, { kind: "length", allowed: "zeroOrMore" });
    const tol = row.number(column, { kind: "length", allowed: "zeroOrMore", isTolerance: true });
    return value === undefined ? [] : [{ kind, at, reading: { values: [value], tol: tol ?? 2 } }];
  });
}

/** The vehicles of a table, an axle a row. */
export function platformsOf(table: Table, stops: StopRows): readonly Platform[] {
  const ids = new Set<string>();
  const platforms = table.rows.flatMap((row): Platform[] => {
    const label = row.text("vehicle", { needed: true });
    const axle = row.choice("axle", axles, { needed: true });
    const kind = row.choice("layout", layoutNames, { needed: true });
    const from = row.year("first year");
    const to = row.year("last year");
    if (from === undefined && to !== undefined) row.fault("first year", messages.nothingIsEntered);
    if (from !== undefined && to !== undefined && to < from) {
      row.fault("last year", messages.itLiesBeforeFirst);
    }
    const trims = row.texts("trims");
    const tellApart = row.text("how to tell it apart");
    const notes = row.text("notes");
    const usual = usualOf(row, stops);
    const mount = mountOfRow(row, "platform");
    const ride = rideOf(row);
    const ownLimits = limitsOf(row);
    const standing = Object.fromEntries(
      platformReadings.flatMap((name) => {
        const reading = readingOf(row, name);
        return reading === undefined ? [] : [[name, reading] as const];
      }),
    );
    if (label === undefined || axle === undefined || kind === undefined) return [];
    const platform: Platform = {
      id: freeId(`${label} ${axle}${from === undefined ? "" : ` ${from}`}`, ids),
      label,
      axle,
      ...(from !== undefined && { years: { from, ...(to !== undefined && { to }) } }),
      ...(trims.length > 0 && { trims }),
      ...(tellApart !== undefined && { tellApart }),
      layout: layoutOf(row, kind),
      ...standing,
      ...(ride && { ride }),
      limits: ownLimits,
      usualStop: usual,
      ...(mount && { mount }),
      ...(notes !== undefined && { notes }),
    };
    row.unsound({ platforms: [{ ...platform, usualStop: null }] });
    return [platform];
  });
  table.tellUnknown();
  return platforms;
}

/** By part number, or by part number and revision: "SL-60" or "SL-60 revision B". */
function usualOf(row: Row, { stops, named }: StopRows): string | null {
  const text = row.text("usual stop");
  if (text === undefined) return null;
  const [, part = text, revision] = /^(.*?)\s+revision\s+(\S+)$/i.exec(text) ?? [];
  const wanted = { partNumber: part, revision };
  const found = stopOfPart({ stops }, wanted);
  if (found) return found.id;
  // Its own row is faulty, which is told there.
  if (named.some(({ partNumber }) => plainNumber(partNumber) === plainNumber(part))) return null;
  row.fault("usual stop", messages.partIsNotAmong({ text: text.slice(0, 60) }));
  return null;
}

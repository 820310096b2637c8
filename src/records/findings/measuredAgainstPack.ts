import type { GeometryReadingName } from "../../physics/fitment.ts";
import { geometryNames } from "../../physics/readings/index.ts";
import type { Message } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/findings.ts";
import type { CheckLayout, TypedReading } from "../check/checkRecord.ts";
import {
  type Pack,
  type PackPlatforms,
  type Platform,
  platformOf,
  platformReading,
} from "../pack/pack.ts";
import { type Spread, spreadOf } from "./quantiles.ts";
import type { FindingSubject } from "./subject.ts";

/** What was measured of one reading of a platform, against what the pack says of it. */
export interface AgainstPack {
  readonly platform: Platform;
  readonly reading: GeometryReadingName | "rideHeight" | "gap";
  /** In the model's units. */
  readonly packValue: number;
  /** Measured minus pack. */
  readonly differences: Spread;
}

function isMeasured(reading: TypedReading | undefined): reading is TypedReading {
  return reading !== undefined && (reading.source ?? "measured") === "measured";
}

/** Measured minus pack by platform and reading. What came from a pack or an estimate is no measurement. */
export function measuredAgainstPack(
  subjects: readonly FindingSubject[],
  pack: PackPlatforms,
): AgainstPack[] {
  const found = new Map<string, { row: Omit<AgainstPack, "differences">; values: number[] }>();
  const add = (
    platform: Platform,
    reading: AgainstPack["reading"],
    said: TypedReading | null | undefined,
    measured: TypedReading | undefined,
  ): void => {
    if (!said || !isMeasured(measured)) return;
    const packValue = meanOf(said);
    const key = `${platform.id} ${reading}`;
    const known = found.get(key) ?? { row: { platform, reading, packValue }, values: [] };
    known.values.push(meanOf(measured) - packValue);
    found.set(key, known);
  };
  for (const { record } of subjects) {
    const platform = platformOf(pack, record.vehicle.platformId);
    if (platform === null || platform.axle !== record.axle) continue;
    const { kind, readings } = record.layout as CheckLayout & {
      readonly readings: { readonly [Name in GeometryReadingName]?: TypedReading };
    };
    for (const name of geometryNames) {
      add(platform, name, platformReading(platform, kind, name), readings[name]);
    }
    for (const corner of record.corners) {
      add(platform, "rideHeight", platform.rideHeight, corner.rideHeight);
      // A lift and another stop change the gap for good reasons.
      if (record.vehicle.liftMm === 0) add(platform, "gap", platform.gap, corner.gap);
    }
  }
  return [...found.values()]
    .flatMap(({ row, values }) => {
      const differences = spreadOf(values);
      return differences === null ? [] : [{ ...row, differences }];
    })
    .sort(
      (a, b) =>
        b.differences.n - a.differences.n ||
        Math.abs(b.differences.median) - Math.abs(a.differences.median),
    );
}

/** Fewer than these say nothing of a platform. Common practice, no source. */
export const fewestToTakeOver = 5;

/**
 * The pack with the median of what was measured in place of one value, and the half-width of the middle half
 * as its least ±; what changed, from how many checks and when, is added to the platform's notes, as `say`
 * puts it into words.
 */
export function packWith(
  pack: Pack,
  { platform, reading, packValue, differences }: AgainstPack,
  day: string,
  say: (note: Message) => string,
): Pack {
  const value = rounded(packValue + differences.median);
  const half = (differences.threeQuarters - differences.quarter) / 2;
  const changed = (before: TypedReading): TypedReading => {
    const { typed: _typed, values: _values, ...rest } = before;
    return { ...rest, values: [value], tol: rounded(Math.max(before.tol, half)) };
  };
  const note = messages.becameMedianOfMeasurements({
    day,
    reading,
    rounded: rounded(packValue),
    value,
    n: differences.n,
  });
  return {
    ...pack,
    platforms: pack.platforms.map((each): Platform => {
      if (each.id !== platform.id) return each;
      const notes = [each.notes?.trim(), say(note)].filter(Boolean).join("\n");
      if (reading === "rideHeight" || reading === "gap") {
        const before = each[reading];
        return before ? { ...each, notes, [reading]: changed(before) } : each;
      }
      const before = platformReading(each, each.layout.kind, reading);
      if (before === null) return each;
      const readings = { ...each.layout.readings, [reading]: changed(before) };
      return { ...each, notes, layout: { ...each.layout, readings } as Platform["layout"] };
    }),
  };
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

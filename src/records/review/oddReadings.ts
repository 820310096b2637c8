import { kinematicsOf } from "../../physics/kinematics/index.ts";
import {
  cornerReadingNames,
  layoutReadingsInOrder,
  layoutRegistry,
  parseReadingId,
  type ReadingId,
  sideOf,
  withoutSide,
} from "../../physics/readings/index.ts";
import { capital, type Quantity, type QuantityKind } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { believableRatio } from "../../physics/verdict/index.ts";
import * as messages from "../../words/compiled/records/review.ts";
import type { CheckRecord, GeometryReadings, TypedReading } from "../check/checkRecord.ts";
import { limitIn } from "../entry/entryPath.ts";
import { catalogueEntry, entryName, isBelievable } from "../entry/readingCatalogue.ts";
import { mmPerInch } from "../entry/units.ts";
import { type PackPlatforms, platformOf, platformReading } from "../pack/pack.ts";
import { oddClaims } from "./oddClaims.ts";
import type { NamedReading, OddReading } from "./oddReading.ts";

export type { NamedReading, OddReading } from "./oddReading.ts";

/** Repeats may differ by this many tolerances (common practice, as in the check of plausibility). */
const mostScatter = 3;
/** How far apart left and right may be, and how far from the pack's geometry (common practice). */
const farLengthMm = 10;
const farGeometryShare = 0.15;
const farDegrees = 6;
const farMassShare = 0.2;

/** Every reading of a record with its id and plain name. */
export function readingsOf(record: CheckRecord): NamedReading[] {
  const found: NamedReading[] = [];
  const add = (id: ReadingId, reading: TypedReading | undefined, name = entryName(id)): void => {
    if (reading !== undefined) found.push({ id, name, reading });
  };
  const shared: GeometryReadings = record.layout.readings;
  const names = layoutReadingsInOrder[record.layout.kind];
  for (const name of names) add(name, shared[name]);
  for (const corner of record.corners) {
    const { side } = corner;
    for (const name of names) add(`${side}.${name}`, corner.geometry?.[name]);
    for (const name of cornerReadingNames) {
      if (name !== "cornerMassKg") add(`${side}.${name}`, corner[name]);
    }
    corner.limits.forEach((limit, index) => {
      const id = `${side}.limits.${index}` as const;
      add(id, limit.reading, entryName(id, limit.kind));
      add(`${id}.distance`, limit.distance);
    });
    add(`${side}.cornerMassKg`, corner.cornerMassKg);
  }
  add("stop.freeHeight", record.stop.freeHeight);
  return found;
}

/** What a reading is shown as; rates, forces and plain numbers are no readings. */
export function quantityKindOf(id: ReadingId): QuantityKind {
  const { kind } = catalogueEntry(id);
  return kind === "angle" || kind === "mass" ? kind : "length";
}

function quantity(id: ReadingId, value: number): Quantity {
  return { kind: quantityKindOf(id), value };
}

function spreadOf({ values }: TypedReading): number {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  return greatest - least;
}

function ofOneReading({ id, name, reading }: NamedReading, record: CheckRecord): OddReading[] {
  const odd: OddReading[] = [];
  const mean = meanOf(reading);
  const { kind, believable } = catalogueEntry(id);
  const touching = id.endsWith(".gap") && record.stop.duty === "carry" && mean >= 0;
  if (!isBelievable(id, mean) && !touching) {
    const slip =
      kind === "length"
        ? [mean * mmPerInch, mean / mmPerInch].find((value) => isBelievable(id, value))
        : undefined;
    odd.push(
      slip === undefined
        ? {
            reading: id,
            kind: "outOfRange",
            sentence: [
              messages.liesOutsideWhatIs({
                name: capital(name),
                quantity: quantity(id, mean),
                quantity2: quantity(id, believable[0]),
                quantity3: quantity(id, believable[1]),
              }),
            ],
          }
        : {
            reading: id,
            kind: "unitSlip",
            sentence: [
              messages.fitsOnlyIfInches({
                name: capital(name),
                quantity: quantity(id, mean),
                quantity2: quantity(id, slip),
              }),
            ],
          },
    );
  }
  const spread = spreadOf(reading);
  if (reading.values.length > 1 && spread > mostScatter * reading.tol) {
    odd.push({
      reading: id,
      kind: "scatter",
      sentence: [
        messages.repeatsOfDifferBy({
          name,
          quantity: quantity(id, spread),
          quantity2: quantity(id, reading.tol),
        }),
      ],
    });
  }
  return odd;
}

function ratioOddities(record: CheckRecord): OddReading[] {
  const odd: OddReading[] = [];
  const { layout } = record;
  const { doubtful: reading } = layoutRegistry[layout.kind];
  for (const corner of record.corners) {
    const kinematics = kinematicsOf(layout, corner);
    const ratio = kinematics.ok ? kinematics.value.ratio(0) : kinematics;
    const own =
      corner.geometry?.[reading] === undefined ? reading : (`${corner.side}.${reading}` as const);
    if (!ratio.ok) {
      odd.push({
        reading: ratio.fault.reading ?? own,
        kind: "ratio",
        sentence: ratio.fault.sentence,
      });
    } else if (ratio.value < believableRatio[0] || ratio.value > believableRatio[1]) {
      odd.push({
        reading: own,
        kind: "ratio",
        sentence: [
          messages.onLeverRatioComes({
            side: corner.side,
            ratio: { kind: "ratio", value: ratio.value },
          }),
        ],
      });
    }
  }
  const shared = odd.filter(
    ({ reading: id }, index) => odd.findIndex((one) => one.reading === id) === index,
  );
  return shared;
}

/** Readings of the two sides that ought to be alike and are not. */
function leftRight(record: CheckRecord, named: readonly NamedReading[]): OddReading[] {
  const byId = new Map<string, NamedReading>(named.map((each) => [each.id, each]));
  const odd: OddReading[] = [];
  for (const { id, reading: left } of named) {
    if (sideOf(id) !== "left") continue;
    const right = byId.get(`right.${withoutSide(id)}`);
    if (right === undefined || !isSameLimit(record, id, right.id)) continue;
    const kind = quantityKindOf(id);
    const [a, b] = [meanOf(left), meanOf(right.reading)];
    const allowed =
      kind === "angle"
        ? farDegrees
        : kind === "mass"
          ? farMassShare * Math.max(a, b)
          : Math.max(farLengthMm, left.tol + right.reading.tol);
    if (Math.abs(a - b) <= allowed) continue;
    odd.push({
      reading: a > b ? id : right.id,
      kind: "leftRight",
      sentence: [
        messages.leftAndRightDiffer({
          entryName: entryName(withoutSide(id), limitIn(record, id)?.kind),
          quantity: quantity(id, a),
          quantity2: quantity(id, b),
        }),
      ],
    });
  }
  return odd;
}

function isSameLimit(record: CheckRecord, left: ReadingId, right: ReadingId): boolean {
  return limitIn(record, left)?.kind === limitIn(record, right)?.kind;
}

/** Geometry that the pack's platform contradicts. Heights and gaps change with lift, so they are not asked. */
function againstPack(
  record: CheckRecord,
  named: readonly NamedReading[],
  pack: PackPlatforms | null,
): OddReading[] {
  const platform = pack === null ? null : platformOf(pack, record.vehicle.platformId);
  if (platform === null) return [];
  const odd: OddReading[] = [];
  if (platform.layout.kind !== record.layout.kind && platform.axle === record.axle) {
    const [first] = named;
    odd.push({
      reading: first?.id ?? "layout.kind",
      kind: "reference",
      sentence: [
        messages.checkSaysThatStop({
          layout: record.layout.kind,
          label: platform.label,
          layout2: platform.layout.kind,
        }),
      ],
    });
    return odd;
  }
  for (const { id, name, reading } of named) {
    const place = parseReadingId(id);
    if (place?.of !== "geometry") continue;
    const reference = platformReading(platform, record.layout.kind, place.name);
    if (reference === null) continue;
    const usual = meanOf(reference);
    const far = quantityKindOf(id) === "angle" ? farDegrees : farGeometryShare * Math.abs(usual);
    if (Math.abs(meanOf(reading) - usual) <= Math.max(far, reading.tol + reference.tol)) continue;
    odd.push({
      reading: id,
      kind: "reference",
      sentence: [
        messages.isPartsLibraryHas({
          name: capital(name),
          quantity: quantity(id, meanOf(reading)),
          quantity2: quantity(id, usual),
          label: platform.label,
        }),
      ],
    });
  }
  return odd;
}

function gapsTooLarge(record: CheckRecord): OddReading[] {
  const odd: OddReading[] = [];
  for (const corner of record.corners) {
    const atStop = corner.limits.filter(({ at }) => at === "stop");
    const least = Math.min(...atStop.map(({ reading }) => meanOf(reading)));
    if (corner.gap === undefined) continue;
    const gap = meanOf(corner.gap);
    if (!(gap > least)) continue;
    odd.push({
      reading: `${corner.side}.gap`,
      kind: "gapTooLarge",
      sentence: [
        messages.gapIsLargerThan({
          side: corner.side,
          gap: { kind: "length", value: gap },
          least: { kind: "length", value: least },
        }),
      ],
    });
  }
  return odd;
}

/** Everything about a record's readings that someone should look at, in the order of measuring. */
export function oddReadings(
  record: CheckRecord,
  pack: PackPlatforms | null,
  now: Date = new Date(),
): OddReading[] {
  const named = readingsOf(record);
  const odd = [
    ...named.flatMap((each) => ofOneReading(each, record)),
    ...ratioOddities(record),
    ...leftRight(record, named),
    ...againstPack(record, named, pack),
    ...gapsTooLarge(record),
    ...oddClaims(record, named, pack, quantityKindOf, now),
  ];
  const place = new Map<string, number>(named.map(({ id }, index) => [id, index]));
  // What is no reading, a demand or a date, comes first.
  const placeOf = ({ reading }: OddReading) => place.get(reading) ?? -1;
  return odd.sort((a, b) => placeOf(a) - placeOf(b));
}

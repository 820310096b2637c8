import type { LimitKind, Reading, Side } from "../../physics/fitment.ts";
import { layoutKinds, type ReadingId, withoutSide } from "../../physics/readings/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { PartialCheckRecord } from "../../records/check/checkRecord.ts";
import { type DrawingValues, drawnReadings, type PicturedReading } from "./drawnNumbers.ts";

const everyDrawn: ReadonlySet<string> = new Set(layoutKinds.flatMap(drawnReadings));

const renamed: { readonly [id: string]: PicturedReading } = {
  cornerMassKg: "cornerMass",
  "stop.freeHeight": "freeHeight",
  "stop.usableCompressionMm": "usableCompression",
};

/**
 * What a drawing shows for a reading's id: "left.gap", "right.pivotToStop", "left.limits.0" (with the
 * limit's kind), "stop.freeHeight". Null where there is no drawing for it.
 */
export function drawnReadingOf(id: ReadingId, limitKind?: LimitKind): PicturedReading | null {
  const name = withoutSide(id);
  if (name.startsWith("limits.")) return limitKind === undefined ? null : `limit:${limitKind}`;
  const drawn = renamed[name] ?? name;
  return everyDrawn.has(drawn) ? (drawn as PicturedReading) : null;
}

function mean(reading: Reading | undefined): number | undefined {
  if (reading === undefined || reading.values.length === 0) return undefined;
  return meanOf(reading);
}

/**
 * The means of all that is known of one side, for its drawings. `limit` is the place of the limit being
 * measured, where there are several of a kind.
 */
export function drawingValues(
  record: PartialCheckRecord,
  side: Side,
  limit?: number,
): DrawingValues {
  const corner = record.corners.find((candidate) => candidate.side === side);
  const geometry = { ...record.layout?.readings, ...corner?.geometry };
  const values: { [Name in PicturedReading]?: number | undefined } = {};
  for (const [name, reading] of Object.entries(geometry)) {
    if (everyDrawn.has(name)) values[name as PicturedReading] = mean(reading);
  }
  corner?.limits.forEach(({ kind, reading }, index) => {
    const drawn: PicturedReading = `limit:${kind}`;
    if (values[drawn] === undefined || index === limit) values[drawn] = mean(reading);
  });
  return {
    ...values,
    gap: mean(corner?.gap),
    pressedHeight: mean(corner?.pressedHeight),
    seatToPad: mean(corner?.seatToPad),
    rideHeight: mean(corner?.rideHeight),
    cornerMass: mean(corner?.cornerMassKg),
    freeHeight: mean(record.stop?.freeHeight),
    usableCompression: record.stop?.usableCompressionMm,
  };
}

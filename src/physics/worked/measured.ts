import * as messages from "../../words/compiled/physics/worked.ts";
import type { Corner, Fitment, GeometryReadingName, Reading } from "../fitment.ts";
import type { Message } from "../sentence.ts";

export { meanOf } from "../uncertainty/readingMean.ts";

export function originOf(reading: Reading | undefined, where = messages.measured): Message {
  if (!reading) return messages.notMeasuredTakenAs;
  if (reading.source === "pack") return messages.fromLibrary;
  if (reading.source === "estimated") return messages.estimated;
  const count = reading.values.length;
  return count > 1 ? messages.meanOfReadings({ where, count }) : where;
}

/** A geometry reading as it holds for one corner: its own where it was measured apart. */
export function geometryReading(
  fitment: Fitment,
  corner: Corner,
  name: GeometryReadingName,
): Reading | undefined {
  const shared: { readonly [Name in GeometryReadingName]?: Reading } = fitment.layout.readings;
  return corner.geometry?.[name] ?? shared[name];
}

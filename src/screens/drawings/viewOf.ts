import { isGeometryReadingName } from "../../physics/readings/index.ts";
import type { PicturedReading } from "../layouts/pictured.ts";
import type { ReadingView } from "../layouts/toldReading.ts";
import { toldGeometry } from "../readings/toldGeometry.ts";

/** How a reading of the geometry, or a distance on its arm, is drawn; null: drawn as the stop or the wheel is. */
export function viewOf(reading: PicturedReading): ReadingView | null {
  if (isGeometryReadingName(reading)) return toldGeometry[reading].view;
  return reading === "limitDistance" ? { from: "above", start: "pivotLine", end: "Stop" } : null;
}

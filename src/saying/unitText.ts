import type { TypedUnit } from "../records/entry/units.ts";
import * as messages from "../words/compiled/saying.ts";

/** A unit as the trade writes it: pounds per inch without the f of the force. */
export function unitText(unit: TypedUnit): string {
  switch (unit) {
    case "deg":
      return "°";
    case "lbf/in":
      return "lb/in";
    case "per km":
      return messages.perKmUnit;
    case "per mile":
      return messages.perMileUnit;
    default:
      return unit;
  }
}

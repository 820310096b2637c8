import type { RideQuantity } from "../../../physics/fitment.ts";
import { fromModel } from "../../../records/units.ts";
import type { Preferences } from "../../preferences.ts";

function figures(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A ride quantity in the person's units, three figures. */
export function rideText(name: RideQuantity, value: number, preferences: Preferences): string {
  const inches = preferences.length === "in";
  switch (name) {
    case "unsprungMassKg":
    case "payloadPerCornerKg":
      return preferences.mass === "lb"
        ? `${fromModel(value, "lb").toFixed(0)} lb`
        : `${value.toFixed(0)} kg`;
    case "wheelRateNPerMm":
    case "tyreRateNPerMm":
      return inches ? `${figures(fromModel(value, "lbf/in"))} lbf/in` : `${figures(value)} N/mm`;
    case "damperBumpNsPerMm":
    case "damperReboundNsPerMm":
      return inches
        ? `${figures(fromModel(value, "lbf·s/in"))} lbf·s/in`
        : `${figures(value)} N·s/mm`;
  }
}

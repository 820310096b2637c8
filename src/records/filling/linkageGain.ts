import { linkageUncertainty } from "../../physics/kinematics/index.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { type LengthUnit, mmPerInch } from "../entry/units.ts";

/** Half-widths of 95 % of a wheel travel, mm, as far as the linkage alone makes them. */
export interface WheelTravelMargins {
  readonly travelMm: number;
  readonly withoutMm: number;
  readonly withMm: number;
}

/** A wheel travel to tell the gain at while the tire's clearance is not measured, mm: round in the person's unit. */
const usualTravel = { mm: 100, in: 4 * mmPerInch } as const;

/**
 * What the other arm, or the arm under the strut, would gain, at this vehicle's clearance over the tire
 * where that is measured. 1.96 standard uncertainties: a normal figure (JCGM 100:2008, G.1.3).
 */
export function wheelTravelMargins(stored: StoredCheck, unit: LengthUnit): WheelTravelMargins {
  const { layout, corners } = stored.record;
  const tire = corners
    .flatMap(({ limits }) => limits)
    .find(({ kind, at, reading }) => kind === "tyre" && at === "wheel" && reading !== undefined);
  const travelMm = tire?.reading === undefined ? usualTravel[unit] : meanOf(tire.reading);
  const { from, to } = layoutRegistry[layout?.kind ?? "arm"].closer ?? {
    from: "prior",
    to: "prior",
  };
  const without = linkageUncertainty(from, layout?.armRole);
  const wanted = linkageUncertainty(to);
  return { travelMm, withoutMm: 1.96 * without * travelMm, withMm: 1.96 * wanted * travelMm };
}

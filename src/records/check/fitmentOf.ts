import type { Fitment } from "../../physics/fitment.ts";
import type { CheckRecord } from "./checkRecord.ts";
import { fullTravelCheckOf } from "./fullTravel.ts";

/** What the assessment needs of a check record. */
export function fitmentOf(record: CheckRecord): Fitment {
  const { layout, corners, stop, ride, rules, fullTravel } = record;
  return {
    use: record.vehicle.use,
    layout,
    corners,
    stop,
    ...(fullTravel && { fullTravel: fullTravelCheckOf(fullTravel) }),
    ...(ride === undefined ? {} : { ride }),
    ...(rules === undefined ? {} : { rules }),
  };
}

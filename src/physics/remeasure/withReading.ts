import type { Corner, Fitment, GeometryReadingName, Reading, RideQuantity } from "../fitment.ts";
import type { ReadingId } from "../outcome.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/** The fitment with one reading in another's place; as it is where it has no such reading. */
export function withReading(fitment: Fitment, id: ReadingId, reading: Reading): Fitment {
  if (id === "stop.freeHeight") {
    return { ...fitment, stop: { ...fitment.stop, freeHeight: reading } };
  }
  if (id === "stop.usableCompressionMm") {
    const usableCompressionMm = meanOf(reading);
    return {
      ...fitment,
      stop: { ...fitment.stop, usableCompressionMm, usableTolMm: reading.tol },
    };
  }
  if (id === "wheelPerOuter") {
    const layout = {
      ...fitment.layout,
      wheelPerOuter: meanOf(reading),
      wheelPerOuterTol: reading.tol,
    };
    return { ...fitment, layout };
  }
  const ride = /^ride\.(\w+)$/.exec(id)?.[1] as RideQuantity | undefined;
  if (ride !== undefined) return withRideValue(fitment, ride, reading);
  const [side, ...rest] = id.split(".");
  if (side !== "left" && side !== "right") {
    const { layout } = fitment;
    return Object.hasOwn(layout.readings, id)
      ? ({
          ...fitment,
          layout: { ...layout, readings: { ...layout.readings, [id]: reading } },
        } as Fitment)
      : fitment;
  }
  return {
    ...fitment,
    corners: fitment.corners.map((corner) =>
      corner.side === side ? withCornerReading(corner, rest.join("."), reading) : corner,
    ),
  };
}

function withRideValue(fitment: Fitment, name: RideQuantity, reading: Reading): Fitment {
  const { ride } = fitment;
  const [value] = reading.values;
  if (ride === undefined || value === undefined) return fitment;
  return {
    ...fitment,
    ride: { ...ride, [name]: value, tolerances: { ...ride.tolerances, [name]: reading.tol } },
  };
}

function withCornerReading(corner: Corner, name: string, reading: Reading): Corner {
  const limit = /^limits\.(\d+)$/.exec(name)?.[1];
  if (limit !== undefined) {
    return {
      ...corner,
      limits: corner.limits.map((each, index) =>
        index === Number(limit) ? { ...each, reading } : each,
      ),
    };
  }
  if (
    name === "gap" ||
    name === "pressedHeight" ||
    name === "seatToPad" ||
    name === "rideHeight" ||
    name === "cornerMassKg"
  ) {
    return { ...corner, [name]: reading };
  }
  return {
    ...corner,
    geometry: { ...corner.geometry, [name as GeometryReadingName]: reading },
  };
}

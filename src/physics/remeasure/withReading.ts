import type {
  Corner,
  Fitment,
  FullTravelCorner,
  GeometryReadingName,
  Reading,
  RideQuantity,
  Side,
} from "../fitment.ts";
import { parseReadingId, type QuantityId, type ReadingPlace } from "../readings/readingId.ts";
import { meanOf } from "../uncertainty/readingMean.ts";

/** The fitment with one reading in another's place; as it is where it has no such reading. */
export function withReading(fitment: Fitment, id: QuantityId, reading: Reading): Fitment {
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
  const place = parseReadingId(id);
  switch (place?.of) {
    case "ride":
      return withRideValue(fitment, place.name, reading);
    case "geometry":
      return place.side === null
        ? withSharedReading(fitment, place.name, reading)
        : withCorner(fitment, place.side, (corner) => ({
            ...corner,
            geometry: { ...corner.geometry, [place.name]: reading },
          }));
    case "corner":
      return withCorner(fitment, place.side, (corner) => ({ ...corner, [place.name]: reading }));
    case "limit":
      return withCorner(fitment, place.side, (corner) => ({
        ...corner,
        limits: corner.limits.map((each, index) =>
          index === place.index && place.name !== "perWheel"
            ? { ...each, [place.name]: reading }
            : each,
        ),
      }));
    case "fullTravel":
      return withContact(fitment, place, reading);
    default:
      return fitment;
  }
}

function withSharedReading(fitment: Fitment, name: GeometryReadingName, reading: Reading): Fitment {
  const { layout } = fitment;
  return Object.hasOwn(layout.readings, name)
    ? ({
        ...fitment,
        layout: { ...layout, readings: { ...layout.readings, [name]: reading } },
      } as Fitment)
    : fitment;
}

function withCorner(fitment: Fitment, side: Side, change: (corner: Corner) => Corner): Fitment {
  const corners = fitment.corners.map((corner) => (corner.side === side ? change(corner) : corner));
  return { ...fitment, corners };
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

/** The check by hand with one of its readings changed; as it is where it has no such contact. */
function withContact(
  fitment: Fitment,
  { side, part, name }: ReadingPlace & { readonly of: "fullTravel" },
  reading: Reading,
): Fitment {
  const { fullTravel } = fitment;
  if (fullTravel === undefined) return fitment;
  const corners = fullTravel.corners.map((own): FullTravelCorner => {
    if (own.side !== side) return own;
    if (part === "atRide") return { ...own, atRide: reading };
    if (part !== "block") return { ...own, contacts: { ...own.contacts, [part]: reading } };
    if (own.block === undefined) return own;
    const changed = name === "blockHeight" ? { blockHeight: reading } : { reading };
    return { ...own, block: { ...own.block, ...changed } };
  });
  return { ...fitment, fullTravel: { ...fullTravel, corners } };
}

import type { GeometryReadingName, LayoutKind } from "../../physics/fitment.ts";
import { geometryRegistry, neededReadings } from "../../physics/readings/index.ts";
import type { PartialCheckRecord } from "./checkRecord.ts";

/** The readings a layout has no motion without, of which neither they nor all their parts are given. */
function lackingReadings(
  kind: LayoutKind,
  isGiven: (name: GeometryReadingName) => boolean,
): readonly GeometryReadingName[] {
  return neededReadings[kind].filter((name) => {
    const { madeOf } = geometryRegistry[name];
    const parts = madeOf === undefined ? [] : [...madeOf.common, ...madeOf.own];
    return !isGiven(name) && !(parts.length > 0 && parts.every(isGiven));
  });
}

/** What the layout of a record lacks on any side that has been begun, each reading once. */
export function lackingGeometry(
  record: Pick<PartialCheckRecord, "layout" | "corners">,
): readonly GeometryReadingName[] {
  const { layout, corners } = record;
  const kind = layout?.kind;
  if (kind === undefined) return [];
  const sides = corners.length === 0 ? [undefined] : corners.map(({ geometry }) => geometry);
  const lacking = sides.flatMap((own) =>
    lackingReadings(
      kind,
      (name) => own?.[name] !== undefined || layout?.readings?.[name] !== undefined,
    ),
  );
  return [...new Set(lacking)];
}

import { type GeometryDefinition, usual } from "./geometryDefinition.ts";

/** A beam axle: track between the tires' middles, and the spacing of its two stops. */
export const axleReadings = {
  track: {
    sort: "length",
    name: "track",
    believable: [900, 2600],
    typical: 1560,
    usualTolerance: usual.longTape,
    use: { axle: "needed" },
    wholeAxle: true,
  },
  stopSpacing: {
    sort: "length",
    name: "spacing of the stops",
    believable: [200, 2400],
    typical: 900,
    usualTolerance: usual.longTape,
    use: { axle: "needed" },
    wholeAxle: true,
  },
} as const satisfies Readonly<Record<string, GeometryDefinition>>;

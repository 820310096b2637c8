import * as messages from "../../words/compiled/physics/layouts.ts";
import { StraightMotion } from "../motion/straightMotion.ts";
import type { LayoutDefinition } from "./layoutDefinition.ts";
import { across, along, leaning } from "./plane.ts";
import { noLinkage } from "./pose.ts";
import { type GeometryDefinitions, usual } from "./readings/geometryDefinition.ts";
import type { ReadingOf } from "./readings/sharedReadings.ts";

/** A beam axle: track between the tires' middles, and the spacing of its two stops. */
const readings = {
  track: {
    sort: "length",
    name: messages.track,
    believable: [900, 2600],
    typical: 1560,
    usualTolerance: usual.longTape,
    of: "beamAxle",
    use: "needed",
    wholeAxle: true,
  },
  stopSpacing: {
    sort: "length",
    name: messages.spacingOfStops,
    believable: [200, 2400],
    typical: 900,
    usualTolerance: usual.longTape,
    of: "beamAxle",
    use: "needed",
    wholeAxle: true,
  },
} as const satisfies GeometryDefinitions;

/** What the model itself may be off: found on published geometries solved in three dimensions; provisional. */
const linkages = {
  axle: {
    doubt: 0.03,
    source: messages.axleRisesLevelBoth,
  },
} as const;

/** The stop over a beam axle, which keeps its angles at every height. */
export const axle = {
  tableWord: "axle",
  readings,
  takes: ["stop", "beamAxle"],
  onArm: false,
  onRod: false,
  saysStopOn: false,
  joinsWheels: true,
  doubtful: "stopLean",
  closer: null,
  linkages,

  motion(_said, places, movement) {
    const track = places.neededLength("track");
    const stopSpacing = places.neededLength("stopSpacing");
    const widths = movement === "one" ? { track, stopSpacing } : null;
    const lean = places.angle("stopLean");
    const scale = places.modelScale("axle");
    return { linkage: "axle", motion: new StraightMotion(lean, widths, scale) };
  },

  turn() {},

  pose(posed, { z, s }) {
    const axis = leaning(posed.angle("stopLean"));
    const seat = along({ x: (posed.length("stopSpacing") ?? 0) / 2, y: 0 }, axis, posed.seatToPad);
    return {
      ...noLinkage,
      wheel: { x: (posed.length("track") ?? 0) / 2, y: z },
      seat,
      pad: along(seat, axis, s - posed.seatToPad),
      padAlong: across(axis),
      rod: null,
    };
  },
} as const satisfies LayoutDefinition<
  keyof typeof readings | ReadingOf<"stop">,
  keyof typeof linkages
> & { readonly readings: GeometryDefinitions };

import * as messages from "../../../words/compiled/physics/layouts/readings.ts";
import { type GeometryDefinitions, usual } from "./geometryDefinition.ts";

/** Distances straight from the centre of one pivot bolt: a length square to the pivot line by tape alone. */
export const boltDistances = {
  boltSpacing: {
    sort: "length",
    name: messages.distanceBetweenPivotBolts,
    believable: [40, 900],
    typical: 330,
    usualTolerance: usual.tape,
    of: "arm",
    use: "part",
  },
  frontBoltToStop: {
    sort: "length",
    name: messages.distanceFromFrontBolt,
    believable: [20, 1500],
    typical: 200,
    usualTolerance: usual.tape,
    of: "stopOnArm",
    use: "part",
  },
  rearBoltToStop: {
    sort: "length",
    name: messages.distanceFromRearBolt,
    believable: [20, 1500],
    typical: 250,
    usualTolerance: usual.tape,
    of: "stopOnArm",
    use: "part",
  },
  frontBoltToMount: {
    sort: "length",
    name: messages.distanceFromFrontBoltTo,
    believable: [20, 1500],
    typical: 320,
    usualTolerance: usual.tape,
    of: "rodOnArm",
    use: "part",
  },
  rearBoltToMount: {
    sort: "length",
    name: messages.distanceFromRearBoltTo,
    believable: [20, 1500],
    typical: 330,
    usualTolerance: usual.tape,
    of: "rodOnArm",
    use: "part",
  },
  frontBoltToOuter: {
    sort: "length",
    name: messages.distanceFromFrontBoltToOuter,
    believable: [80, 2000],
    typical: 450,
    usualTolerance: usual.tape,
    of: "arm",
    use: "part",
  },
  rearBoltToOuter: {
    sort: "length",
    name: messages.distanceFromRearBoltToOuter,
    believable: [80, 2000],
    typical: 440,
    usualTolerance: usual.tape,
    of: "arm",
    use: "part",
  },
} as const satisfies GeometryDefinitions;

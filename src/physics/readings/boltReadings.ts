import { type GeometryDefinition, usual } from "./geometryDefinition.ts";

/** Distances straight from the centre of one pivot bolt: a length square to the pivot line by tape alone. */
export const boltDistances = {
  boltSpacing: {
    sort: "length",
    name: "distance between the pivot bolts",
    believable: [40, 900],
    typical: 330,
    usualTolerance: usual.tape,
    use: { arm: "part", damper: "part" },
  },
  frontBoltToStop: {
    sort: "length",
    name: "distance from front bolt to stop",
    believable: [20, 1500],
    typical: 200,
    usualTolerance: usual.tape,
    use: { arm: "part" },
  },
  rearBoltToStop: {
    sort: "length",
    name: "distance from rear bolt to stop",
    believable: [20, 1500],
    typical: 250,
    usualTolerance: usual.tape,
    use: { arm: "part" },
  },
  frontBoltToMount: {
    sort: "length",
    name: "distance from front bolt to shock mount",
    believable: [20, 1500],
    typical: 320,
    usualTolerance: usual.tape,
    use: { damper: "part" },
  },
  rearBoltToMount: {
    sort: "length",
    name: "distance from rear bolt to shock mount",
    believable: [20, 1500],
    typical: 330,
    usualTolerance: usual.tape,
    use: { damper: "part" },
  },
  frontBoltToOuter: {
    sort: "length",
    name: "distance from front bolt to outer joint",
    believable: [80, 2000],
    typical: 450,
    usualTolerance: usual.tape,
    use: { arm: "part", damper: "part" },
  },
  rearBoltToOuter: {
    sort: "length",
    name: "distance from rear bolt to outer joint",
    believable: [80, 2000],
    typical: 440,
    usualTolerance: usual.tape,
    use: { arm: "part", damper: "part" },
  },
} as const satisfies Readonly<Record<string, GeometryDefinition>>;

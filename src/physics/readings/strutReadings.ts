import { type GeometryDefinition, usual } from "./geometryDefinition.ts";

/** The arm below a strut, in front view. The arm is square to its pivot line, its angle as of any arm. */
export const strutReadings = {
  lowerArmLength: {
    sort: "length",
    name: "length of the lower arm",
    believable: [120, 1000],
    typical: 330,
    usualTolerance: usual.tape,
    use: { strut: "optional" },
    noDefault: true,
  },
  lowerArmAngle: {
    sort: "angle",
    name: "angle of the lower arm",
    believable: [-35, 35],
    typical: 6,
    usualTolerance: usual.angle,
    use: { strut: "optional" },
    noDefault: true,
  },
  jointToTop: {
    sort: "length",
    name: "distance from the lower joint to the strut's top mount",
    believable: [300, 1200],
    typical: 560,
    usualTolerance: usual.longTape,
    use: { strut: "optional" },
    noDefault: true,
  },
  jointToTopLean: {
    sort: "angle",
    name: "lean of the line from the lower joint to the strut's top mount",
    believable: [-45, 60],
    typical: 12,
    usualTolerance: usual.lean,
    use: { strut: "optional" },
    standIn: "stopLean",
  },
} as const satisfies Readonly<Record<string, GeometryDefinition>>;

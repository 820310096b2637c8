import * as messages from "../../../words/compiled/physics/layouts/readings.ts";
import { type GeometryDefinitions, usual } from "./geometryDefinition.ts";

/** Heights above the level ground the vehicle stands on: an arm's angle by tape alone. */
export const heights = {
  pivotHeight: {
    sort: "length",
    name: messages.heightOfPivotLine,
    believable: [80, 1200],
    typical: 400,
    usualTolerance: usual.height,
    of: "arm",
    use: "part",
  },
  outerHeight: {
    sort: "length",
    name: messages.heightOfOuterJoint,
    believable: [80, 1200],
    typical: 345,
    usualTolerance: usual.height,
    of: "arm",
    use: "part",
  },
  stopHeight: {
    sort: "length",
    name: messages.heightOfStopsContact,
    believable: [80, 1200],
    typical: 380,
    usualTolerance: usual.height,
    of: "stopOnArm",
    use: "part",
  },
  mountHeight: {
    sort: "length",
    name: messages.heightOfShocksLower,
    believable: [80, 1200],
    typical: 365,
    usualTolerance: usual.height,
    of: "rodOnArm",
    use: "part",
  },
  otherPivotHeight: {
    sort: "length",
    name: messages.heightOfOtherArms,
    believable: [80, 1500],
    typical: 650,
    usualTolerance: usual.height,
    of: "otherArm",
    use: "part",
  },
  otherOuterHeight: {
    sort: "length",
    name: messages.heightOfOtherArmsOuter,
    believable: [80, 1500],
    typical: 640,
    usualTolerance: usual.height,
    of: "otherArm",
    use: "part",
  },
} as const satisfies GeometryDefinitions;

/** What is said of a layout only here, beside its motion (`kinematics`) and the readings that it takes. */
interface LayoutDefinition {
  /** The stop, or the damper with the stop on its rod, is moved by an arm that turns about a pivot line. */
  readonly onArm: boolean;
  /** Both wheels are on one part: one wheel alone moves its stop otherwise than both together. */
  readonly joinsWheels: boolean;
  /** The reading that a strange lever ratio most likely comes from. */
  readonly doubtful: string;
}

/** Where a stop sits: on an arm, on a damper's rod, on a strut's rod, over a beam axle. */
export const layoutDefinitions = {
  arm: { onArm: true, joinsWheels: false, doubtful: "pivotToStop" },
  damper: { onArm: true, joinsWheels: false, doubtful: "pivotToMount" },
  strut: { onArm: false, joinsWheels: false, doubtful: "stopLean" },
  axle: { onArm: false, joinsWheels: true, doubtful: "stopLean" },
} as const satisfies Readonly<Record<string, LayoutDefinition>>;

export type LayoutKind = keyof typeof layoutDefinitions;

export const layoutKinds = Object.keys(layoutDefinitions) as readonly LayoutKind[];

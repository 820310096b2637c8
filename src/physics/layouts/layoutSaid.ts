/** Which arm was measured: of two arms the lower or the upper, the one under a strut, or one that carries the wheel itself. */
export const armRoles = ["lower", "upper", "underStrut", "carriesWheel"] as const;
export type ArmRole = (typeof armRoles)[number];

/** What the stop is fixed to, where it or its pad is flat and turns. */
export const stopCarriers = ["frame", "arm"] as const;
export type StopCarrier = (typeof stopCarriers)[number];

/**
 * What is said of a layout beside its readings. `wheelPerOuter` κ: wheel travel per travel of the outer joint,
 * as typed from a pack, with its rectangular ± (0 where absent). `stopOn` says what is flat and turns: absent a
 * round contact, frame: the stop on the frame and a flat pad on the arm, arm: the stop on the arm and a flat
 * pad on the frame.
 */
export interface LayoutSaid {
  readonly armRole?: ArmRole;
  readonly wheelPerOuter?: number;
  readonly wheelPerOuterTol?: number;
  readonly stopOn?: StopCarrier;
}

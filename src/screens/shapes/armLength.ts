/** Where an arm's lengths end: its stop, its outer joint (or wheel center), its damper's mount. */
export type ArmPoint = "Stop" | "Outer" | "Mount";

/** What a length of an arm runs between, seen from above. */
export interface ArmLength {
  readonly start: "pivotLine" | "frontBolt" | "rearBolt";
  readonly end: ArmPoint | "rearBolt";
}

/** What a reading is taken with. */
export const toolIds = [
  "tape",
  "tapeI",
  "tapeII",
  "tapeIII",
  "rule",
  "caliper",
  "feeler",
  "angleGauge",
  "level",
  "phone",
  "protractor",
  "wheelScales",
  "wheelScale",
  "weighbridge",
] as const;
export type ToolId = (typeof toolIds)[number];

/** How well the tool's ends can be brought to the points of the measurement. */
export const reaches = ["clear", "awkward", "far"] as const;
export type Reach = (typeof reaches)[number];

export function isToolId(value: unknown): value is ToolId {
  return (toolIds as readonly unknown[]).includes(value);
}

export function isReach(value: unknown): value is Reach {
  return (reaches as readonly unknown[]).includes(value);
}

/** Readings that one tool serves: the tool chosen for one is offered for the next of its group. */
export const toolGroups = ["near", "length", "angle", "mass"] as const;
export type ToolGroup = (typeof toolGroups)[number];

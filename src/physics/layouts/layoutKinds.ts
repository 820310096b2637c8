import { layouts } from "./layouts.ts";

export type LayoutKind = keyof typeof layouts;

/** The layouts by name, without what they stand for: a build has these names alone where no more is needed. */
export const layoutKinds = Object.keys(layouts) as readonly LayoutKind[];

import type { ComponentChild, ComponentChildren } from "preact";
import { parted } from "../physics/sentence.ts";

/** Words, numbers and conditions go into a message as they are; whatever else is to be shown takes its place. */
type Filling<Values> = { readonly [Name in keyof Values]: Values[Name] | ComponentChildren };

/** A message whose values are shown as parts of the page: marked words, links, numbers that stand out. */
export function filled<Values extends object>(
  message: (values: Values) => string,
  values: Filling<Values>,
): ComponentChild[] {
  return parted(message, values, (value): value is ComponentChild => typeof value === "object");
}

import type { ComponentChild, ComponentChildren } from "preact";
import { inPlaces, placeFor, withoutPlaces } from "../saying/places.ts";

/** Words, numbers and conditions go into a message as they are; whatever else is to be shown takes its place. */
type Filling<Values> = { readonly [Name in keyof Values]: Values[Name] | ComponentChildren };

/** A message whose values are shown as parts of the page: marked words, links, numbers that stand out. */
export function filled<Values extends object>(
  message: (values: Values) => string,
  values: Filling<Values>,
): ComponentChild[] {
  const parts: ComponentChild[] = [];
  const marked = Object.entries(values).map(([name, value]) => {
    if (typeof value === "string") return [name, withoutPlaces(value)];
    return [
      name,
      typeof value === "object" ? placeFor(value as ComponentChild, parts) : (value ?? ""),
    ];
  });
  return inPlaces(message(Object.fromEntries(marked) as Values), parts);
}

import type { ComponentChild, ComponentChildren } from "preact";

/** Words, numbers and conditions go into a message as they are; whatever else is to be shown takes its place. */
type Filling<Values> = { readonly [Name in keyof Values]: Values[Name] | ComponentChildren };

/** Stand in a message for what is no text; they are taken out of texts that hold them. */
const [placeStart, placeEnd] = ["\uE000", "\uE001"];
const places = new RegExp(`[${placeStart}${placeEnd}]`, "g");

/** A message whose values are shown as parts of the page: marked words, links, numbers that stand out. */
export function filled<Values extends object>(
  message: (values: Values) => string,
  values: Filling<Values>,
): ComponentChild[] {
  const parts: ComponentChild[] = [];
  const marked = Object.fromEntries(
    Object.entries(values).map(([name, value]) => {
      if (typeof value === "string") return [name, value.replace(places, "")];
      if (typeof value !== "object") return [name, value ?? ""];
      parts.push(value as ComponentChild);
      return [name, `${placeStart}${parts.length - 1}${placeEnd}`];
    }),
  ) as Values;
  return message(marked)
    .split(new RegExp(`${placeStart}(\\d+)${placeEnd}`))
    .map((text, index) => (index % 2 === 0 ? text : (parts[Number(text)] ?? "")))
    .filter((part) => part !== "");
}

/** Stand in a text for what is no text; they are taken out of texts that hold them. */
const [start, end] = ["\uE000", "\uE001"];
const mark = new RegExp(`[${start}${end}]`, "g");
const place = new RegExp(`${start}(\\d+)${end}`);

/** A text that is typed or told, so that it marks no place. */
export function withoutPlaces(text: string): string {
  return text.replace(mark, "");
}

/** Stands in a text for a part that is no text; the part is put behind those that are there. */
export function placeFor<Part>(part: Part, parts: Part[]): string {
  return `${start}${parts.push(part) - 1}${end}`;
}

/** The texts between the parts, and the parts in their places. */
export function inPlaces<Part>(text: string, parts: readonly Part[]): (string | Part)[] {
  return text
    .split(place)
    .map((each, index) => (index % 2 === 0 ? each : (parts[Number(each)] ?? "")))
    .filter((each) => each !== "");
}

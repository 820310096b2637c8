/** Stand in a text for what is no text; they are taken out of texts that hold them. */
const [start, end] = ["\uE000", "\uE001"];
const marks = new RegExp(`[${start}${end}]`, "g");
const place = new RegExp(`${start}(\\d+)${end}`);

/** A text in the making, with parts in it that are no text: each is marked, and comes back in its place. */
export class Places<Part> {
  readonly #parts: Part[] = [];

  /** Stands in the text for the part. */
  mark(part: Part): string {
    this.#parts.push(part);
    return `${start}${this.#parts.length - 1}${end}`;
  }

  /** A text that is typed or told, so that it marks no place. */
  plain(text: string): string {
    return text.replace(marks, "");
  }

  /** The texts between the parts, and the parts. */
  split(text: string): (string | Part)[] {
    return text
      .split(place)
      .map((each, index) => (index % 2 === 0 ? each : (this.#parts[Number(each)] ?? "")))
      .filter((each) => each !== "");
  }
}

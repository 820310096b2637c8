import Papa from "papaparse";

/** Between the cells of a row. */
export type Delimiter = ";" | "\t" | "|" | ",";
export const delimiters: readonly Delimiter[] = [";", "\t", "|", ","];

interface Parsed {
  readonly data: readonly (readonly string[])[];
  readonly meta: { readonly cursor: number };
}

/** Rows of cells from delimited text that comes in pieces; a row cut by a piece's end is kept for later. */
export class DelimitedRows {
  readonly #delimiter: Delimiter;
  #newline: "\r\n" | "\n" | "\r" | null = null;
  #rest = "";

  constructor(delimiter: Delimiter) {
    this.#delimiter = delimiter;
  }

  /** Characters not yet given out as rows. */
  get waiting(): number {
    return this.#rest.length;
  }

  /** The whole rows so far. `last`: nothing more comes, so that an unfinished row counts as whole. */
  push(piece: string, last = false): readonly (readonly string[])[] {
    const text = this.#rest + piece;
    this.#newline ??= newlineOf(text, last);
    if (this.#newline === null) {
      this.#rest = text;
      return [];
    }
    const parser = new Papa.Parser({ delimiter: this.#delimiter, newline: this.#newline });
    const { data, meta } = parser.parse(text, 0, !last) as Parsed;
    this.#rest = last ? "" : text.slice(meta.cursor);
    return data;
  }
}

/** Null while a piece ends before any line does: the next may begin with the other half of "\r\n". */
function newlineOf(text: string, last: boolean): "\r\n" | "\n" | "\r" | null {
  const end = /\r\n|\n|\r(?!$)/.exec(text)?.[0];
  if (end === "\r\n" || end === "\n" || end === "\r") return end;
  return last ? "\n" : null;
}

import Papa from "papaparse";
import * as messages from "../../words/compiled/records/packTables.ts";
import type { Message, Sentence, Words } from "../../words/message.ts";
import { parseText } from "../entry/entry.ts";
import { type AllowedSign, parseNumber } from "../entry/lengthEntry.ts";
import type { EntryKind } from "../entry/readingCatalogue.ts";
import type { EntryUnit } from "../entry/units.ts";
import { type Pack, packFormat, packVersion } from "../pack/pack.ts";
import { readPackValue } from "../pack/readPack.ts";
import { readThread, type Thread } from "../pack/thread.ts";

/** One table of a spreadsheet, saved as CSV. */
export interface TableText {
  /** As a sentence names it: "stops.csv". */
  readonly file: string;
  readonly text: string;
}

interface Heading {
  /** Lower case, without its unit and without ±. */
  readonly name: string;
  readonly isTolerance: boolean;
  readonly unit: string;
}

const headingForm = /^(±|\+\/-)?\s*(.*?)\s*(?:[([]([^)\]]*)[)\]])?$/;

function headingOf(text: string): Heading {
  const [, sign, name = "", unit = ""] = headingForm.exec(text.trim()) ?? [];
  return {
    name: name.toLowerCase().replace(/\s+/g, " "),
    isTolerance: sign !== undefined,
    unit: unit.trim(),
  };
}

const units: { readonly [text: string]: EntryUnit } = {
  mm: "mm",
  in: "in",
  inch: "in",
  inches: "in",
  deg: "deg",
  "°": "deg",
  kg: "kg",
  lb: "lb",
  lbs: "lb",
  n: "N",
  lbf: "lbf",
  "n/mm": "N/mm",
  "lbf/in": "lbf/in",
  "lb/in": "lbf/in",
  "n·s/mm": "N·s/mm",
  "n s/mm": "N·s/mm",
  "ns/mm": "N·s/mm",
  "lbf·s/in": "lbf·s/in",
  "lbf s/in": "lbf·s/in",
};

const usualUnits: { readonly [Kind in EntryKind]: EntryUnit } = {
  length: "mm",
  angle: "deg",
  mass: "kg",
  rate: "N/mm",
  damping: "N·s/mm",
  force: "N",
  roadSpeed: "km/h",
  contactRate: "per km",
  number: "",
};

const kindUnits: { readonly [Kind in EntryKind]: readonly EntryUnit[] } = {
  length: ["mm", "in"],
  angle: ["deg"],
  mass: ["kg", "lb"],
  rate: ["N/mm", "lbf/in"],
  damping: ["N·s/mm", "lbf·s/in"],
  force: ["N", "lbf"],
  roadSpeed: ["km/h", "mph"],
  contactRate: ["per km", "per mile"],
  number: [""],
};

function unitsOf(kind: EntryKind): Words {
  const [unit, other] = kindUnits[kind];
  if (unit === undefined || unit === "") return messages.knownHere;
  return other === undefined ? unit : messages.or({ unit, other });
}

/** A table by its rows, whose headings say what each column is and in which unit. */
export class Table {
  readonly rows: readonly Row[];
  readonly #headings: readonly Heading[];
  readonly #asked = new Set<string>();

  private constructor(
    readonly file: string,
    lines: readonly (readonly string[])[],
    readonly faults: Sentence[],
  ) {
    const [first = [], ...rest] = lines;
    this.#headings = first.map(headingOf);
    this.rows = rest.flatMap((cells, index) =>
      cells.every((cell) => cell.trim() === "") ? [] : [new Row(this, cells, index + 2, faults)],
    );
    if (this.rows.length === 0) faults.push([messages.hasNoRowsBelow({ file })]);
  }

  static read({ file, text }: TableText, faults: Sentence[]): Table {
    const { data } = Papa.parse<string[]>(text.replace(/^\ufeff/, "").trimEnd(), {
      delimitersToGuess: [",", ";", "\t"],
    });
    return new Table(file, data, faults);
  }

  /** Where a column stands, and its unit as the heading says it; -1: there is none. */
  column(name: string, isTolerance = false): { readonly at: number; readonly unit: string } {
    this.#asked.add(`${isTolerance} ${name}`);
    const at = this.#headings.findIndex(
      (heading) => heading.name === name && heading.isTolerance === isTolerance,
    );
    return { at, unit: this.#headings[at]?.unit ?? "" };
  }

  hasColumn(name: string): boolean {
    return this.column(name).at >= 0;
  }

  /** A heading that no row asked for is a slip of the pen: what stands below it would be lost. */
  tellUnknown(): void {
    for (const { name, isTolerance } of this.#headings) {
      if (name === "" || this.#asked.has(`${isTolerance} ${name}`)) continue;
      this.faults.push([
        messages.headingIsNotKnown({ file: this.file, isTolerance, name: name.slice(0, 60) }),
      ]);
    }
  }
}

interface Asked {
  readonly kind: EntryKind;
  readonly allowed?: AllowedSign;
  readonly needed?: boolean;
  readonly isTolerance?: boolean;
}

/** One row of a table. What can't be read is a sentence that names the row and the column. */
export class Row {
  constructor(
    private readonly table: Table,
    private readonly cells: readonly string[],
    readonly line: number,
    private readonly faults: Sentence[],
  ) {}

  fault(column: string, sentence: Message | Sentence): void {
    this.faults.push([messages.row({ file: this.table.file, line: this.line, column, sentence })]);
  }

  /** What of an item made of this row breaks the rules of a pack. */
  unsound(items: Partial<Pick<Pack, "stops" | "platforms">>): void {
    const pack = { format: packFormat, version: packVersion, name: "", stops: [], platforms: [] };
    const read = readPackValue({ ...pack, ...items });
    if (read.ok) return;
    for (const { sentence } of read.faults) {
      this.faults.push([messages.row2({ file: this.table.file, line: this.line, sentence })]);
    }
  }

  text(name: string, { needed = false }: { readonly needed?: boolean } = {}): string | undefined {
    const { at } = this.table.column(name);
    const text = (this.cells[at] ?? "").trim();
    if (text === "" && needed)
      this.fault(name, at < 0 ? messages.columnIsMissing : messages.nothingIsEntered);
    if (text.length > 200) {
      this.fault(name, messages.textIsLongerThan);
      return undefined;
    }
    return text === "" ? undefined : text;
  }

  /** Texts apart by semicolons. */
  texts(name: string): readonly string[] {
    return (this.text(name) ?? "")
      .split(";")
      .map((part) => part.trim())
      .filter((part) => part !== "");
  }

  choice<Value extends string>(
    name: string,
    values: { readonly [words: string]: Value },
    options: { readonly needed?: boolean } = {},
  ): Value | undefined {
    const text = this.text(name, options);
    if (text === undefined) return undefined;
    const found = values[text.toLowerCase()];
    if (found === undefined) {
      this.fault(
        name,
        messages.isNoneOf2({ text: text.slice(0, 40), values: Object.keys(values).join(", ") }),
      );
    }
    return found;
  }

  number(
    name: string,
    { kind, allowed = "aboveZero", needed = false, isTolerance = false }: Asked,
  ): number | undefined {
    const { at, unit } = this.table.column(name, isTolerance);
    const text = (this.cells[at] ?? "").trim();
    const told = isTolerance ? `± ${name}` : name;
    if (text === "") {
      if (needed) this.fault(told, at < 0 ? messages.columnIsMissing : messages.nothingIsEntered);
      return undefined;
    }
    return this.#valueOf(told, text, unit, kind, allowed);
  }

  numbers(name: string, kind: EntryKind): readonly number[] | undefined {
    const { unit } = this.table.column(name);
    const values = this.texts(name).map((part) =>
      this.#valueOf(name, part, unit, kind, "aboveZero"),
    );
    const read = values.filter((value) => value !== undefined);
    return read.length === 0 || read.length < values.length ? undefined : read;
  }

  share(name: string): number | undefined {
    const { at } = this.table.column(name);
    const text = (this.cells[at] ?? "").replace("%", "").trim();
    if (text === "") return undefined;
    const read = parseNumber(text, "zeroOrMore");
    if (read.ok && read.value < 100) return read.value / 100;
    this.fault(name, messages.isNoPercentageBelow({ text: text.slice(0, 40) }));
    return undefined;
  }

  year(name: string): number | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    if (/^(19|20|21)\d\d$/.test(text)) return Number(text);
    this.fault(name, messages.isNoYearSuch({ text: text.slice(0, 40) }));
    return undefined;
  }

  thread(name: string): Thread | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const read = readThread(text);
    if (read.ok) return read.value;
    this.fault(name, read.fault.sentence);
    return undefined;
  }

  #valueOf(
    name: string,
    text: string,
    heading: string,
    kind: EntryKind,
    allowed: AllowedSign,
  ): number | undefined {
    const unit = heading === "" ? usualUnits[kind] : units[heading.toLowerCase()];
    if (unit === undefined || !kindUnits[kind].includes(unit)) {
      this.fault(name, messages.unitOfHeadingIs({ heading, those: unitsOf(kind) }));
      return undefined;
    }
    const read = parseText(text, kind, unit, allowed);
    if (read.ok) return read.value.value;
    this.fault(name, read.fault.sentence);
    return undefined;
  }
}

import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import type { Remark } from "../../physics/stopTests/index.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import type { Message } from "../../words/message.ts";
import { shortened } from "../text/jsonText.ts";
import { type Heading, readHeading } from "./headings.ts";
import type { TestColumn, TestQuantity } from "./testFile.ts";
import { quantityOfUnit, testUnitOf, unitsOfQuantity } from "./testUnits.ts";

/** The columns of a file and where its rows of numbers begin. */
export interface ColumnsFound {
  readonly columns: readonly TestColumn[];
  readonly firstRow: number;
  readonly remarks: readonly Remark[];
}

/** How many of the four quantities a row of headings names. */
export function headingsIn(cells: readonly string[]): number {
  const named = cells.map(readHeading).filter(({ quantity }) => quantity !== null);
  return new Set(named.map(({ quantity }) => quantity)).size;
}

const looksLikeNumber = /^\s*[+\-−]?[\d.,'’\s]*\d[\d.,'’\s]*(?:[eE][+-]?\d+)?\s*$/;

/** A cell that may well be a number in some style of writing. */
export function isNumber(cell: string | undefined): boolean {
  return cell !== undefined && looksLikeNumber.test(cell);
}

const fewestHeadings = 2;

/**
 * Place of the first row that names columns and has numbers in them below it, a row of units or an empty
 * one between; −1 where there is none. A sentence that happens to hold the words is none.
 */
export function headingRow(rows: readonly (readonly string[])[]): number {
  return rows.findIndex((cells, place) => {
    if (headingsIn(cells) < fewestHeadings) return false;
    const named = cells.flatMap((cell, index) =>
      readHeading(cell).quantity === null ? [] : [index],
    );
    const below = rows.slice(place + 1, place + 4);
    const numbers = below.findIndex((each) => named.every((at) => isNumber(each[at])));
    // The row nearest to the numbers names them.
    return (
      numbers !== -1 && below.slice(0, numbers).every((each) => headingsIn(each) < fewestHeadings)
    );
  });
}

/**
 * The columns by the file's own headings, among its first rows. Units may stand in the heading or in a
 * row of their own below it. Where a heading's unit is that of another quantity and all of them fit once
 * the names are exchanged, the units are believed and that is told.
 *
 * Errors: "headingsNotKnown", "columnMissing", "columnsTwice", "unitNotTold", "unitNotKnown",
 * "unitOfAnother".
 */
export function columnsOf(rows: readonly (readonly string[])[]): Outcome<ColumnsFound> {
  // Without any number below, the headings still tell what is wrong with the file.
  const holdsNumbers = rows.some((each) => each.filter(isNumber).length >= fewestHeadings);
  const place = holdsNumbers
    ? headingRow(rows)
    : rows.findIndex((each) => headingsIn(each) >= fewestHeadings);
  const cells = rows[place];
  if (cells === undefined) return fail("headingsNotKnown", headingsNotKnown);
  const below = rows[place + 1] ?? [];
  const unitRow = below.some((cell) => bareUnit(cell) !== null);
  const headings = cells.map((cell, index) => {
    const heading = readHeading(cell);
    const unit = unitRow && heading.unit === null ? bareUnit(below[index] ?? "") : null;
    return unit === null ? heading : { ...heading, unit, unitText: below[index] ?? "" };
  });
  const chosen = chosenHeadings(headings);
  if (!chosen.ok) return chosen;
  return withUnits(chosen.value, place + (unitRow ? 2 : 1));
}

function bareUnit(cell: string) {
  return testUnitOf(cell.trim().replace(/^[[({]|[\])}]$/g, ""));
}

type Chosen = ReadonlyMap<TestQuantity, { readonly heading: Heading; readonly index: number }>;

function chosenHeadings(headings: readonly Heading[]): Outcome<Chosen> {
  const chosen = new Map<TestQuantity, { heading: Heading; index: number }>();
  for (const [index, heading] of headings.entries()) {
    if (heading.quantity === null) continue;
    const other = chosen.get(heading.quantity);
    if (other !== undefined) {
      return fail("columnsTwice", [
        messages.twoColumnsAreHeaded({
          quantity: nameOf[heading.quantity],
          text: shortened(other.heading.text),
          text2: shortened(heading.text),
        }),
      ]);
    }
    chosen.set(heading.quantity, { heading, index });
  }
  for (const needed of ["depth", "force"] as const) {
    if (!chosen.has(needed)) return missing(nameOf[needed]);
  }
  if (!chosen.has("speed") && !chosen.has("time")) return missing(messages.speedOrTime);
  // Either tells the motion: the one that says its unit is enough.
  if (chosen.has("speed") && chosen.has("time")) {
    if (chosen.get("time")?.heading.unit === null) chosen.delete("time");
    else if (chosen.get("speed")?.heading.unit === null) chosen.delete("speed");
  }
  return succeed(chosen);
}

const nameOf: { readonly [Each in TestQuantity]: Message } = {
  depth: messages.depth,
  speed: messages.speed,
  force: messages.force,
  time: messages.time,
};

function missing(what: Message): Outcome<never> {
  return fail("columnMissing", [messages.noColumnOfThis({ what })]);
}

function withUnits(chosen: Chosen, firstRow: number): Outcome<ColumnsFound> {
  const columns: TestColumn[] = [];
  let exchanged = false;
  for (const [quantity, { heading, index }] of chosen) {
    if (heading.unit === null) {
      const known = unitsOfQuantity(quantity).join(", ");
      return heading.unitText === ""
        ? fail("unitNotTold", [messages.columnDoesNotSay({ text: shortened(heading.text), known })])
        : fail("unitNotKnown", [
            messages.unitOfIsNot({
              unitText: shortened(heading.unitText),
              quantity: nameOf[quantity],
              known,
            }),
          ]);
    }
    const own = quantityOfUnit(heading.unit);
    exchanged ||= own !== quantity;
    columns.push({ index, quantity: own, unit: heading.unit, heading: heading.text });
  }
  if (new Set(columns.map(({ quantity }) => quantity)).size < columns.length) {
    return fail("unitOfAnother", [messages.unitsInHeadingsDo]);
  }
  const known = columns.map(({ quantity }) => quantity);
  if (!known.includes("depth") || !known.includes("force")) return missing(messages.depthAndForce);
  return succeed({
    columns,
    firstRow,
    remarks: exchanged
      ? [
          {
            code: "columnsSwapped",
            sentence: [messages.namesAndUnitsIn],
          },
        ]
      : [],
  });
}

const headingsNotKnown = [messages.noRowOfThis];

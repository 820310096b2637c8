import { entryUnit } from "../records/entry/readingCatalogue.ts";
import { plainDecimal } from "../records/entry/units.ts";
import type { FieldDifference } from "../records/pack/packDifferences.ts";
import { packField } from "../records/pack/packField.ts";
import * as messages from "../words/compiled/saying.ts";
import { said } from "./texts.ts";

/** Both values of a field that differs, in the model's units; null where it is not given. */
export interface DifferenceTexts {
  readonly mine: string | null;
  readonly theirs: string | null;
}

/** Of tables only the rows in which they differ are told. */
export function differenceTexts({ path, mine, theirs }: FieldDifference): DifferenceTexts {
  const unit = entryUnit(packField(path).kind, "mm");
  const [one, other] = [tableOf(mine), tableOf(theirs)];
  return {
    mine: one ? tableText(one, other ?? []) : valueText(mine, unit),
    theirs: other ? tableText(other, one ?? []) : valueText(theirs, unit),
  };
}

type Table = readonly (readonly number[])[];

function tableOf(value: unknown): Table | null {
  return Array.isArray(value) && value.length > 0 && value.every((row) => Array.isArray(row))
    ? value
    : null;
}

function valueText(value: unknown, unit: string): string | null {
  if (value === undefined) return null;
  if (value === null) return messages.none;
  if (typeof value === "boolean") return value ? messages.yes : messages.no;
  if (typeof value === "number") return withUnit(numberText(value), unit);
  if (typeof value === "string") return value;
  if (Array.isArray(value)) return listText(value);
  return groupText(value as { readonly [name: string]: unknown }, unit);
}

function groupText(value: { readonly [name: string]: unknown }, unit: string): string {
  if (Array.isArray(value.values)) {
    const numbers = value.values.map((each) => numberText(Number(each))).join(", ");
    return withUnit(`${numbers} ± ${numberText(Number(value.tol))}`, unit);
  }
  return Object.entries(value)
    .map(([name, each]) => `${said(packField(name).name)} ${valueText(each, "") ?? messages.none}`)
    .join(", ");
}

/** A list in a cell that is longer is told by how much it holds. */
const mostCharacters = 300;

/** Tables as rows of numbers; lists of groups by how many there are and what they say. */
function listText(list: readonly unknown[]): string {
  const table = tableOf(list);
  if (table) return table.map(rowText).join("; ");
  if (list.length === 0) return messages.none;
  const texts = list.map((each) => valueText(each, "") ?? messages.none).join("; ");
  return texts.length > mostCharacters ? messages.entries({ count: list.length }) : texts;
}

const mostRowsTold = 3;

/** How many rows a table has, and the first of those that the other table has otherwise. */
function tableText(table: Table, other: Table): string {
  const differing = table.flatMap((row, index) => {
    const theirs = other[index];
    const same = theirs?.length === row.length && row.every((each, at) => each === theirs[at]);
    return same ? [] : [messages.row({ index: index + 1, row: rowText(row) })];
  });
  const more = differing.length - mostRowsTold;
  return [
    messages.rows({ count: table.length }),
    ...differing.slice(0, mostRowsTold),
    ...(more > 0 ? [messages.moreRows({ more })] : []),
  ].join("; ");
}

function rowText(row: readonly number[]): string {
  return row.map(numberText).join(" / ");
}

function numberText(value: number): string {
  return Number.isFinite(value) ? plainDecimal(Number(value.toPrecision(7))) : messages.unknown;
}

function withUnit(text: string, unit: string): string {
  return unit === "" ? text : unit === "deg" ? `${text}°` : `${text} ${unit}`;
}

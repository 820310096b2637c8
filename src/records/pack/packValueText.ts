import { definitionOf } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { type EntryKind, entryUnit } from "../entry/readingCatalogue.ts";
import { plainDecimal } from "../entry/units.ts";

/** A field of a pack by its path: its plain name, and its values as text in the model's units. */
export interface FieldText {
  readonly name: string;
  /** Null where it is not given. */
  text(value: unknown): string | null;
}

/** Fields that are no readings, and what they are called. */
const names: { readonly [field: string]: string } = {
  name: "name",
  label: "name",
  notes: "notes",
  duty: "duty",
  material: "material",
  outerDiameterMm: messages.outerDiameter,
  mounting: messages.mountingInWords,
  mount: "mounting",
  way: messages.wayOfMounting,
  sizeMm: messages.threadBoreOrCup,
  pitchMm: messages.pitchOfThread,
  spacingMm: messages.distanceBetweenBolts,
  seatMm: messages.seatAcross,
  roomMm: messages.roomAcross,
  layouts: messages.layoutsItIsMade,
  state: "state",
  replacedBy: messages.replacedBy2,
  build: "build",
  forceTolShare: messages.batchScatterOfForces,
  conditions: messages.conditionsOfTest,
  partNumber: messages.partNumber,
  revision: "revision",
  spacersMm: "spacers",
  years: "years",
  trims: "trims",
  tellApart: messages.howItIsTold,
  edition: "edition",
  maker: "maker",
  repeatability: messages.measuredOfReadings2,
  testedAtSpeed: messages.testedAtSpeed,
  estimated: messages.estimateOfCurve,
  how: messages.howItWasEstimated,
  forceShare: messages.ofEstimatedForces,
  tests: "tests",
  axle: "axle",
  kind: "layout",
  limits: messages.usualClearances,
  usualStop: messages.usualStop,
  roadClass: messages.roadClass,
  events: messages.bumpsAndLandings,
};

const kinds: { readonly [field: string]: EntryKind } = {
  outerDiameterMm: "length",
  sizeMm: "length",
  pitchMm: "length",
  spacingMm: "length",
  seatMm: "length",
  roomMm: "length",
};

/** The field at this path of a stop, platform or set of rules. */
export function fromModelText(path: string): FieldText {
  const parts = path.split(".");
  const field = parts.at(-1) ?? path;
  const own = Object.hasOwn(names, field) ? names[field] : undefined;
  const entry = definitionOf(field);
  const kind = kinds[field] ?? ((own === undefined && entry?.kind) || "number");
  const group = parts.includes("tolerances") ? messages.ofWord : "";
  const how = parts.includes("estimated") && parts.length > 1 ? messages.howItWasFound : "";
  return {
    name: `${group}${own ?? `${how}${entry?.name.replace(/ of the stop$/, "") ?? field}`}`,
    text: (value) => valueText(value, entryUnit(kind, "mm")),
  };
}

function valueText(value: unknown, unit: string): string | null {
  if (value === undefined) return null;
  if (value === null) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
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
    .map(([name, each]) => `${fromModelText(name).name} ${valueText(each, "") ?? "none"}`)
    .join(", ");
}

/** Tables as rows of numbers; lists of groups by how many there are and what they say. */
function listText(list: readonly unknown[]): string {
  if (list.length === 0) return "none";
  if (list.every((row) => Array.isArray(row))) {
    return list.map((row) => (row as readonly number[]).map(numberText).join(" / ")).join("; ");
  }
  const texts = list.map((each) => valueText(each, "") ?? "none").join("; ");
  return texts.length > 300
    ? list.length === 1
      ? messages.n1Entry
      : messages.entries({ list: list.length })
    : texts;
}

const mostRowsTold = 3;

/** How many rows a table has, and the first of those that the other table has otherwise. */
export function tableText(
  table: readonly (readonly number[])[],
  other: readonly (readonly number[])[],
): string {
  const rows = messages.row2({ table: table.length });
  const differing = table.flatMap((row, index) => {
    const theirs = other[index];
    const same = theirs?.length === row.length && row.every((each, at) => each === theirs[at]);
    return same ? [] : [messages.row({ index: index + 1, row: row.map(numberText).join(" / ") })];
  });
  const more = differing.length - mostRowsTold;
  const told = differing.slice(0, mostRowsTold);
  return [rows, ...told, ...(more > 0 ? [messages.andMoreRows({ more })] : [])].join("; ");
}

function numberText(value: number): string {
  return Number.isFinite(value) ? plainDecimal(Number(value.toPrecision(7))) : "unknown";
}

function withUnit(text: string, unit: string): string {
  return unit === "" ? text : unit === "deg" ? `${text}°` : `${text} ${unit}`;
}

import * as messages from "../../words/compiled/records/packTables.ts";
import type { Sentence } from "../../words/message.ts";
import { type Maker, makerCode, type Pack, packFormat, packVersion } from "../pack/pack.ts";
import { readPackValue } from "../pack/readPack.ts";
import { platformsOf } from "./platformTable.ts";
import { curvesOf, stopsOf } from "./stopTable.ts";
import { Table, type TableText } from "./tableRows.ts";

/** The tables of a spreadsheet that make a pack. */
export interface PackTables {
  /** One row: name, edition, maker, code, address, contact, logo, color, spacers. */
  readonly maker: TableText;
  readonly stops: TableText;
  readonly curves: TableText;
  readonly platforms: TableText;
}

export type PackOfTables =
  | { readonly ok: true; readonly pack: Pack }
  /** A sentence for each fault, naming table, row and column. */
  | { readonly ok: false; readonly faults: readonly Sentence[] };

/** The head of the pack: who makes it, and what the whole of it shares. */
function headOf(table: Table): Pick<Pack, "name" | "edition" | "maker" | "spacersMm" | "notes"> {
  const [row, ...more] = table.rows;
  for (const each of more) each.fault("name", messages.thisTableHasOne);
  if (row === undefined) return { name: "" };
  const name = row.text("name", { needed: true }) ?? "";
  const edition = row.text("edition", { needed: true });
  const makerName = row.text("maker") ?? name;
  const code = row.text("code")?.toUpperCase() ?? makerCode(makerName);
  const address = row.text("address");
  const contact = row.text("contact");
  const logo = row.text("logo");
  const color = row.text("color");
  const spacersMm = row.numbers("spacers", "length");
  const notes = row.text("notes");
  table.tellUnknown();
  const maker: Maker = {
    name: makerName,
    code,
    ...(address !== undefined && { address }),
    ...(contact !== undefined && { contact }),
    ...(logo !== undefined && { logo }),
    ...(color !== undefined && { color }),
  };
  return {
    name,
    ...(edition !== undefined && { edition }),
    maker,
    ...(spacersMm && { spacersMm }),
    ...(notes !== undefined && { notes }),
  };
}

/** A pack of four tables, or everything that is wrong with them. */
export function packOfTables(tables: PackTables): PackOfTables {
  const faults: Sentence[] = [];
  const head = headOf(Table.read(tables.maker, faults));
  const curves = curvesOf(Table.read(tables.curves, faults));
  const rows = stopsOf(Table.read(tables.stops, faults), curves, tables.curves.file);
  const platforms = platformsOf(Table.read(tables.platforms, faults), rows);
  if (faults.length > 0) return { ok: false, faults };
  const pack: Pack = {
    format: packFormat,
    version: packVersion,
    ...head,
    stops: rows.stops,
    platforms,
  };
  const read = readPackValue(pack);
  return read.ok
    ? { ok: true, pack: read.value }
    : { ok: false, faults: read.faults.map(({ sentence }) => sentence) };
}

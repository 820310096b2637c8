import type { CurvePoint, DampingPoint } from "../../physics/fitment.ts";
import * as messages from "../../words/compiled/records/packTables.ts";
import type { PackStop, TestConditions } from "../pack/pack.ts";
import { mountOfRow } from "./mountColumns.ts";
import type { Row, Table } from "./tableRows.ts";

interface Rows {
  readonly points: (readonly [number, number, number | undefined, number | undefined])[];
}

/** A part number with its revision, as both tables write it. */
function keyOf(partNumber: string, revision: string | undefined): string {
  return JSON.stringify([partNumber, revision ?? ""]);
}

/** The rows of each part: depth and force, and damping where it was tested at speed. */
export function curvesOf(table: Table): ReadonlyMap<string, Rows> {
  const curves = new Map<string, Rows>();
  for (const row of table.rows) {
    const partNumber = row.text("part number", { needed: true });
    const revision = row.text("revision");
    const depth = row.number("depth", { kind: "length", allowed: "zeroOrMore", needed: true });
    const force = row.number("force", { kind: "force", allowed: "zeroOrMore", needed: true });
    const into = row.number("damping in", { kind: "damping", allowed: "zeroOrMore" });
    const out = row.number("damping out", { kind: "damping", allowed: "zeroOrMore" });
    if ((into === undefined) !== (out === undefined)) {
      row.fault("damping in", messages.dampingNeedsBothDirections);
    }
    if (partNumber === undefined || depth === undefined || force === undefined) continue;
    const key = keyOf(partNumber, revision);
    const known = curves.get(key) ?? { points: [] };
    known.points.push([depth, force, into, out]);
    curves.set(key, known);
  }
  table.tellUnknown();
  return curves;
}

const duties = { impact: "impact", carry: "carry" } as const;
const states = { offered: "offered", discontinued: "discontinued" } as const;

/** The stops of a table, and every part that it names, those of faulty rows too. */
export interface StopRows {
  readonly stops: readonly PackStop[];
  readonly named: readonly Pick<PackStop, "partNumber" | "revision">[];
}

/** The stops of a table, each with its rows of the other one. */
export function stopsOf(
  table: Table,
  curves: ReadonlyMap<string, Rows>,
  curveFile: string,
): StopRows {
  const ids = new Set<string>();
  const named = new Map<
    string,
    { readonly line: number; readonly part: StopRows["named"][number] }
  >();
  const stops = table.rows.flatMap((row): PackStop[] => {
    const partNumber = row.text("part number", { needed: true });
    const revision = row.text("revision");
    const key = keyOf(partNumber ?? "", revision);
    const before = named.get(key);
    if (before !== undefined && partNumber !== undefined) {
      row.fault("part number", messages.standsInRowAlready({ partNumber, line: before.line }));
    } else if (partNumber !== undefined) {
      named.set(key, { line: row.line, part: { partNumber, ...(revision && { revision }) } });
    }
    const stop = stopOf(row, partNumber, revision, { curves, curveFile, ids });
    if (stop !== null) row.unsound({ stops: [stop] });
    return stop === null ? [] : [stop];
  });
  table.tellUnknown();
  for (const key of curves.keys()) {
    if (named.has(key)) continue;
    const [part, revision] = JSON.parse(key) as [string, string];
    const noRevision = revision === "";
    table.faults.push([
      messages.thereAreRowsOf({ curveFile, part, noRevision, revision, file: table.file }),
    ]);
  }
  return { stops, named: [...named.values()].map(({ part }) => part) };
}

function stopOf(
  row: Row,
  partNumber: string | undefined,
  revision: string | undefined,
  {
    curves,
    curveFile,
    ids,
  }: {
    readonly curves: ReadonlyMap<string, Rows>;
    readonly curveFile: string;
    readonly ids: Set<string>;
  },
): PackStop | null {
  const name = row.text("name", { needed: true });
  const duty = row.choice("purpose", duties, { needed: true });
  const height = row.number("free height", { kind: "length", needed: true });
  const heightTol = row.number("free height", {
    kind: "length",
    allowed: "zeroOrMore",
    isTolerance: true,
  });
  const usable = row.number("usable compression", { kind: "length", needed: true });
  const usableTolMm = row.number("usable compression", {
    kind: "length",
    allowed: "zeroOrMore",
    isTolerance: true,
  });
  const forceTolShare = row.share("forces vary by");
  const state = row.choice("state", states);
  const replacedBy = row.text("replaced by");
  const build = row.text("build");
  const outerDiameterMm = row.number("outer diameter", { kind: "length" });
  const spacersMm = row.numbers("spacers", "length");
  const material = row.text("material");
  const notes = row.text("notes");
  const mount = mountOfRow(row, "stop");
  const conditions = conditionsOf(row);
  if (partNumber === undefined) return null;
  const points = curves.get(keyOf(partNumber, revision))?.points;
  if (points === undefined) {
    row.fault("part number", messages.thereAreNoRows({ partNumber, curveFile }));
  }
  if (!name || !duty || height === undefined || usable === undefined || points === undefined) {
    return null;
  }
  const damping = points.flatMap(([depth, , into, out]): DampingPoint[] =>
    into === undefined || out === undefined ? [] : [[depth, into, out]],
  );
  const curve = points.map(([depth, force]): CurvePoint => [depth, force]);
  return {
    id: freeId(`${partNumber}${revision === undefined ? "" : `-${revision}`}`, ids),
    partNumber,
    ...(revision !== undefined && { revision }),
    name,
    ...(state !== undefined && { state }),
    ...(replacedBy !== undefined && { replacedBy }),
    ...(build !== undefined && { build }),
    duty,
    freeHeight: { values: [height], tol: heightTol ?? 0 },
    usableCompressionMm: usable,
    ...(usableTolMm !== undefined && { usableTolMm }),
    ...(forceTolShare !== undefined && { forceTolShare }),
    // The point (0, 0) is every stop's own.
    curve: curve.filter(([depth, force]) => depth !== 0 || force !== 0),
    damping: damping.length === 0 ? null : damping,
    testedAtSpeed: damping.length > 0,
    ...(conditions && { conditions }),
    ...(material !== undefined && { material }),
    ...(outerDiameterMm !== undefined && { outerDiameterMm }),
    ...(mount !== undefined && { mount }),
    ...(spacersMm !== undefined && { spacersMm }),
    ...(notes !== undefined && { notes }),
  };
}

const conditionColumns = {
  "test temperature": "temperature",
  "test preload": "preload",
  "test cycles before": "conditioning",
  "test rest before": "rest",
  "test specimen": "specimen",
} as const satisfies { readonly [column: string]: keyof TestConditions };

function conditionsOf(row: Row): TestConditions | undefined {
  const found = Object.entries(conditionColumns).flatMap(([column, name]) => {
    const text = row.text(column);
    return text === undefined ? [] : [[name, text] as const];
  });
  return found.length === 0 ? undefined : Object.fromEntries(found);
}

/** An id made of a text, that no other row has. */
export function freeId(text: string, ids: Set<string>): string {
  const base =
    text
      .normalize("NFKD")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 80) || "item";
  let id = base;
  for (let count = 2; ids.has(id); count += 1) id = `${base}-${count}`;
  ids.add(id);
  return id;
}

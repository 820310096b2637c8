import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutKinds, layoutRegistry } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/packTables.ts";
import { isThreaded, type Mounting, type MountingWay } from "../pack/mounting.ts";
import type { Row } from "./tableRows.ts";

const ways: { readonly [words: string]: MountingWay } = {
  stud: "stud",
  bolt: "bolt",
  "two bolts": "twoBolts",
  rod: "rod",
  cup: "cup",
};

const tableWords = layoutKinds.map((kind) => layoutRegistry[kind].tableWord);

/** Layouts by the word of a table, or by their name in a record. */
export const layoutNames: { readonly [words: string]: LayoutKind } = Object.fromEntries([
  ...layoutKinds.map((kind) => [kind, kind]),
  ...layoutKinds.map((kind) => [layoutRegistry[kind].tableWord, kind]),
]);

/** The columns of a mounting: those of a stop, or of the place for one. */
export function mountOfRow(row: Row, of: "stop" | "platform"): Mounting | undefined {
  const way = row.choice("mounting", ways);
  const thread = way !== undefined && isThreaded(way) ? row.thread("thread") : undefined;
  if (way === undefined || !isThreaded(way)) {
    const text = row.text("thread");
    if (text !== undefined) row.fault("thread", messages.threadGoesWithStud);
  }
  const bore = row.number("bore", { kind: "length" });
  if (bore !== undefined && way !== undefined && isThreaded(way)) {
    row.fault("bore", messages.boreGoesWithRod);
  }
  const spacingMm = row.number("between bolts", { kind: "length" });
  const seatMm = row.number(of === "stop" ? "foot across" : "room for foot", { kind: "length" });
  const roomMm = of === "platform" ? row.number("room for stop", { kind: "length" }) : undefined;
  const layouts = of === "stop" ? layoutsOf(row) : [];
  if (way === undefined) return undefined;
  return {
    way,
    ...(thread ?? (bore === undefined ? {} : { sizeMm: bore })),
    ...(spacingMm !== undefined && way === "twoBolts" && { spacingMm }),
    ...(seatMm !== undefined && { seatMm }),
    ...(roomMm !== undefined && { roomMm }),
    ...(layouts.length > 0 && { layouts }),
  };
}

function layoutsOf(row: Row): readonly LayoutKind[] {
  return row.texts("made for").flatMap((text) => {
    const found = layoutNames[text.toLowerCase()];
    if (found === undefined) {
      row.fault(
        "made for",
        messages.isNoneOf({ text: text.slice(0, 40), tableWords: tableWords.join(", ") }),
      );
    }
    return found === undefined ? [] : [found];
  });
}

import type { CsvField, TableCell } from "../records/review/csv.ts";
import type { Sentence, Words } from "../words/message.ts";
import { inModelUnits } from "./modelUnits.ts";

/** The fields of a table's line, what is to be said of them in words. */
export function cellTexts(
  cells: readonly TableCell[],
  say: (said: Words | Sentence) => string = inModelUnits,
): CsvField[] {
  return cells.map((cell) => (typeof cell === "object" && cell !== null ? say(cell) : cell));
}

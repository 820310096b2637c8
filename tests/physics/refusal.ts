import type { Outcome } from "../../src/physics/outcome.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";

/** A fault in one line: its code, its reading in brackets if it names one, and its sentence. */
export function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) return "none";
  const { code, reading, sentence } = outcome.fault;
  const named = reading === undefined ? "" : ` (${reading})`;
  return `${code}${named}: ${inModelUnits(sentence)}`;
}

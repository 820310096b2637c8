import type { Outcome } from "../../../src/physics/outcome.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

/** The value of an outcome, or a failed test that says which fault stood in its place. */
export function given<Value>(outcome: Outcome<Value>): Value {
  if (outcome.ok) return outcome.value;
  throw new Error(`${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`);
}

/** The code of the fault; "none" where there is a value. */
export function faultCode<Value>(outcome: Outcome<Value>): string {
  return outcome.ok ? "none" : outcome.fault.code;
}

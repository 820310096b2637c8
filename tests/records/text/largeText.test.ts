import { describe, expect, it } from "vitest";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { readJsonText } from "../../../src/records/text/jsonText.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? outcome.value : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
const read = (text: string) => told(readJsonText(text, "The file"));

describe("a large text", () => {
  it("is no longer than a check may be, to the letter", () => {
    const filled = (length: number) => `"${"x".repeat(length - 2)}"`;
    expect(readJsonText(filled(recordBounds.textCharacters), "The file").ok).toBe(true);
    expect(read(filled(recordBounds.textCharacters + 1))).toBe(
      `textTooLong: The file is too large to be a check: the most is ${recordBounds.textCharacters / 1e6} MB.`,
    );
  });
});

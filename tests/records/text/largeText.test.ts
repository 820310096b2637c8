import { describe, expect, it } from "vitest";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { inModelUnits } from "../../../src/physics/sentence.ts";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { checkPlainData, readJsonText } from "../../../src/records/text/jsonText.ts";

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

  it("has no more values and fields than a check", () => {
    const words = `The file holds more than ${recordBounds.values} values, which no check does. It is not read.`;
    const list = (count: number) => `[${"1,".repeat(count - 1)}1]`;
    expect(readJsonText(list(recordBounds.values - 1), "The file").ok).toBe(true);
    expect(read(list(recordBounds.values))).toBe(`tooMany: ${words}`);
    const empties = (count: number) => `[${Array(count).fill("[]").join()}]`;
    expect(read(empties(recordBounds.values / 2 + 2))).toBe(`tooMany: ${words}`);
    const fields = (count: number) =>
      JSON.stringify(Object.fromEntries(Array.from({ length: count }, (_, at) => [`f${at}`, 1])));
    expect(readJsonText(fields(recordBounds.fields), "The file").ok).toBe(true);
    expect(read(fields(recordBounds.fields + 1))).toBe(
      `tooManyFields: The file has more than ${recordBounds.fields} fields in one place, which no check does. It is not read.`,
    );
  });

  it("as a value has no more of them either", () => {
    const check = (value: unknown) => told(checkPlainData(value, "It"));
    expect(check(Array(recordBounds.values - 1).fill(1))).toHaveLength(recordBounds.values - 1);
    expect(check(Array(recordBounds.values).fill(1))).toMatch(/^tooMany/);
  });
});

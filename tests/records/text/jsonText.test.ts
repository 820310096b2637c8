import { describe, expect, it } from "vitest";
import type { Outcome } from "../../../src/physics/outcome.ts";
import { recordBounds } from "../../../src/records/check/recordFormat.ts";
import { checkPlainData, readJsonText, shortened } from "../../../src/records/text/jsonText.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";

const told = (outcome: Outcome<unknown>) =>
  outcome.ok ? outcome.value : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
const read = (text: string) => told(readJsonText(text, "The file"));

describe("JSON from anywhere", () => {
  it("is read whatever it is, after a mark of its bytes or without", () => {
    for (const value of [1, "a", null, true, [], {}, { a: [1, { b: "c" }] }, ["{", '"', "\\"]]) {
      expect(read(JSON.stringify(value))).toEqual(value);
      expect(read(`\ufeff${JSON.stringify(value)}`)).toEqual(value);
    }
    expect(read("1\ufeff")).toMatch(/^textNotJson/);
  });

  it("that is empty, cut off or none is told so", () => {
    for (const text of ["", " \n\t", "\ufeff"])
      expect(read(text)).toBe("textEmpty: The file is empty.");
    const cut = "textNotJson: The file is cut off: its end is missing. Send it again.";
    for (const text of ['{"a":1', '{"a":"b', "[1,2,", '{"a":', "[1 "]) expect(read(text)).toBe(cut);
    expect(read("[1 2]")).toBe(
      "textNotJson: The file is not a check: it is not JSON from line 1, character 4 on.",
    );
    expect(read('{\n"a": 1,\n b}')).toBe(
      "textNotJson: The file is not a check: it is not JSON from line 3, character 2 on.",
    );
  });

  it("has no more levels than a check, those that are closed again not counted", () => {
    const deep = (levels: number) => "[".repeat(levels) + "]".repeat(levels);
    const objects = (levels: number) => `${'{"a":'.repeat(levels)}1${"}".repeat(levels)}`;
    const { nesting } = recordBounds;
    expect(readJsonText(deep(nesting), "The file").ok).toBe(true);
    expect(readJsonText(objects(nesting), "The file").ok).toBe(true);
    const words = `tooDeep: The file has lists within lists more than ${nesting} deep, which no check has.`;
    expect(read(deep(nesting + 1))).toBe(words);
    expect(read(objects(nesting + 1))).toBe(words);
    expect(readJsonText(`[${"[],{},".repeat(100)}1]`, "The file").ok).toBe(true);
    expect(readJsonText(JSON.stringify("[".repeat(100)), "The file").ok).toBe(true);
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

  it("has no field twice in one place, however it is spelled, and may have it in two", () => {
    const words = "so it is not clear which holds.";
    expect(read('{"a":1,"a":2}')).toBe(
      `fieldTwice: The file has the field “a” twice in one place, ${words}`,
    );
    expect(read('{"a":1,"\\u0061"\n :2}')).toBe(
      `fieldTwice: The file has the field “a” twice in one place, ${words}`,
    );
    expect(read('{"a\\"b":1,"a\\"b":2}')).toContain('“a"b” twice');
    expect(read('{"a\\\\":1,"a\\\\":2}')).toContain("“a\\” twice");
    expect(read('{"a":{"a":1},"b":[{"a":2},{"a":3}]}')).toEqual({
      a: { a: 1 },
      b: [{ a: 2 }, { a: 3 }],
    });
    expect(read('{"a":"b","b":"a","c":["a","a"]}')).toEqual({ a: "b", b: "a", c: ["a", "a"] });
    const long = "n".repeat(41);
    expect(read(`{"${long}":1,"${long}":2}`)).toContain(`“${"n".repeat(40)}…” twice`);
  });

  it("has no “__proto__”, plain or spelled, and no number that is too large", () => {
    const words =
      "fieldForbidden: The file has a field named “__proto__”, which no check has. It is not read.";
    expect(read('{"__proto__":1}')).toBe(words);
    expect(read('[{"a":{"\\u005f_proto__":1}}]')).toBe(words);
    expect(read('{"a":"__proto__"}')).toEqual({ a: "__proto__" });
    expect(read('{"a":[1,-1e999]}')).toBe(
      "numberNotFinite: The file: a number in “a” is too large to be a number.",
    );
    expect(read('{"a":{"b":1e999}}')).toContain("in “b” is too large");
    expect(read("1e999")).toContain("in “” is too large");
  });
});

describe("a value that is none of JSON's text", () => {
  it("is held to the same", () => {
    const check = (value: unknown) => told(checkPlainData(value, "It"));
    const nested = (levels: number): unknown => (levels === 0 ? 1 : [nested(levels - 1)]);
    expect(check(nested(recordBounds.nesting))).toEqual(nested(recordBounds.nesting));
    expect(check(nested(recordBounds.nesting + 1))).toMatch(/^tooDeep/);
    expect(check(JSON.parse('{"__proto__":1}'))).toBe(
      "fieldForbidden: It has a field named “__proto__”, which no check has. It is not read.",
    );
    expect(check({ a: Number.NaN })).toMatch(/^numberNotFinite/);
    expect(check(Array(recordBounds.values - 1).fill(1))).toHaveLength(recordBounds.values - 1);
    expect(check(Array(recordBounds.values).fill(1))).toMatch(/^tooMany/);
    expect(check({ a: null, b: undefined, c: [null] })).toEqual({
      a: null,
      b: undefined,
      c: [null],
    });
  });

  it("has its names shortened in a sentence, those of forty letters not", () => {
    expect(shortened("n".repeat(40))).toBe("n".repeat(40));
    expect(shortened("n".repeat(41))).toBe(`${"n".repeat(40)}…`);
    expect(shortened("abc", 2)).toBe("ab…");
  });
});

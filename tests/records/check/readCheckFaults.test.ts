import { describe, expect, it } from "vitest";
import { readCheckText, readCheckValue } from "../../../src/records/check/readCheck.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";

const record = demoRecord("arm-fits");

function refusal(value: unknown, what?: string): string {
  const read = what === undefined ? readCheckValue(value) : readCheckValue(value, what);
  return read.ok ? "" : `${read.fault.code}: ${inModelUnits(read.fault.sentence)}`;
}

describe("what is no check of this version", () => {
  it("is told by its code and its words", () => {
    expect(refusal(record)).toBe("");
    for (const none of [5, null, [], "a"]) {
      expect(refusal(none, "It")).toBe("notACheck: It is not a fitment check.");
      expect(refusal(none)).toBe("notACheck: The file is not a fitment check.");
    }
    expect(refusal({ ...record, format: "other" }, "It")).toBe(
      "otherFormat: It is not a fitment check: its format is “other”.",
    );
    for (const value of [{}, { format: 5 }, Object.create({ format: "stopfit-check" })]) {
      expect(refusal(value, "It")).toBe(
        "otherFormat: It is not a fitment check: it does not say that it is one.",
      );
    }
    const newer =
      "newerVersion: It was made by a newer version of Stopfit (record version 3); this one reads up to version 2. Update Stopfit, then open it again.";
    expect(refusal({ ...record, version: 3 }, "It")).toBe(newer);
    const unknown = "unknownVersion: It does not say which version of the record it is.";
    for (const version of [undefined, null, "3", 0, -1, 2.5]) {
      expect(refusal({ ...record, version }, "It"), String(version)).toBe(unknown);
    }
    expect(readCheckText("{", "The link")).toMatchObject({
      ok: false,
      fault: { code: "textNotJson" },
    });
    const deep = { ...record, own: Array(60).reduce((inner) => [inner], 1) };
    expect(refusal({ ...deep, far: Number.NaN }, "It")).toMatch(/^numberNotFinite: It: /);
  });
});

describe("faults of a check", () => {
  const broken = (count: number) => {
    const fields = ["createdAt", "axle", "layout", "corners", "stop", "ride"].slice(0, count);
    return { ...record, ...Object.fromEntries(fields.map((name) => [name, 5])) };
  };

  it("are told together: three in words, how many more there are, and all of them beside", () => {
    const told = (count: number) => {
      const read = readCheckValue(broken(count));
      if (read.ok) throw new Error("read");
      const each = read.faults.map(({ sentence }) => inModelUnits(sentence));
      return { each, words: inModelUnits(read.fault.sentence), code: read.fault.code, read };
    };
    const one = told(1);
    expect(one.words).toBe(one.each[0]);
    expect(one.code).toBe(one.read.faults[0]?.code);
    const three = told(3);
    expect(three.each).toHaveLength(3);
    expect(three.words).toBe(three.each.join(" "));
    const four = told(4);
    expect(four.words).toBe(`${four.each.slice(0, 3).join(" ")} There is 1 more fault.`);
    const six = told(6);
    expect(six.words).toBe(`${six.each.slice(0, 3).join(" ")} There are 3 more faults.`);
    expect(six.code).toBe(six.read.faults[0]?.code);
  });

  it("are fifty at most", () => {
    const values = Array.from({ length: 80 }, () => "x");
    const [corner] = record.corners;
    const read = readCheckValue({
      ...record,
      corners: [{ ...corner, gap: { values, tol: 1 } }, ...record.corners.slice(1)],
    });
    expect(read.ok ? 0 : read.faults.length).toBe(50);
  });
});

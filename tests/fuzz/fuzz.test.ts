import { describe, expect, it } from "vitest";
import { campaign } from "./campaign.ts";
import { doorFuzzers } from "./doorFuzzers.ts";
import { fuzzers } from "./fuzzers.ts";
import { unsoundNumber, unsoundSentence } from "./soundness.ts";

// A hundredth of `npm run fuzz`: of each input so many cases, and always the same.
describe.each([...fuzzers, ...doorFuzzers])("any $name", (fuzzer) => {
  it("gives finite numbers or a sentence, and throws nothing", () => {
    const cases = Math.ceil(fuzzer.cases / 100);
    const result = campaign(fuzzer, { seed: 20_260_502, cases, assessEvery: 100 });
    expect(result.failures).toEqual([]);
    expect(result.cases).toBe(cases);
    // Neither all nor none is taken: the cases reach behind the first door.
    expect(result.accepted).toBeGreaterThan(cases / 100);
    expect(result.accepted).toBeLessThan(cases);
  });
});

describe("a campaign finds", () => {
  const options = { seed: 1, cases: 50, assessEvery: 1 };
  const with_ = (run: () => never | string | null) =>
    campaign(
      {
        name: "bad",
        cases: 50,
        run: () => ({ fault: run(), accepted: true, input: "" }),
      },
      options,
    ).failures.length;

  it("what is thrown and what is unsound, up to twenty, and nothing else", () => {
    expect(
      with_(() => {
        throw new RangeError("bad");
      }),
    ).toBe(20);
    expect(with_(() => "unsound")).toBe(20);
    expect(with_(() => null)).toBe(0);
  });

  it("a number that is none, wherever it stands", () => {
    expect(unsoundNumber({ a: [1, { b: Number.NaN }] })).toBe(".a.1.b");
    expect(unsoundNumber(new Map([["a", Number.POSITIVE_INFINITY]]))).toBe(".a");
    expect(unsoundNumber(Float64Array.of(1, Number.NaN))).toBe(".1");
    expect(unsoundNumber({ a: null, b: "NaN", c: undefined, d: 1 })).toBeNull();
  });

  it("a sentence that is none, unless its words are the input's own", () => {
    const fault = (words: string) => ({ code: "bad", sentence: [words] });
    expect(unsoundSentence(fault("The gap is NaN mm."), "{}")).not.toBeNull();
    expect(unsoundSentence(fault("The field “NaN” is unknown."), '{"NaN":1}')).toBeNull();
    expect(unsoundSentence(fault(" "), "")).not.toBeNull();
    expect(unsoundSentence({ code: "", sentence: ["A whole sentence."] }, "")).not.toBeNull();
    expect(unsoundSentence(fault("The gap is too large to be one."), "")).toBeNull();
  });
});

import { expect, it } from "vitest";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import type { Pack, PackTest } from "../../src/records/pack/pack.ts";
import { readPackText } from "../../src/records/pack/readPack.ts";
import { withPlainSpaces } from "../../src/saying/quantityText.ts";
import { remarkTexts } from "../../src/saying/remarkTexts.ts";

const old: PackTest = {
  id: "t1",
  file: "bench.csv",
  importedAt: "2026-03-12T10:00:00Z",
  kind: "rows",
  rows: 24,
  remarks: ["The depths were moved by 2.5 mm so that the force begins at 0."],
};
const typed: PackTest = {
  ...old,
  remarkSentences: [
    [
      "The depths were moved by ",
      { kind: "length", value: 2.54 },
      " so that the force begins at 0.",
    ],
  ],
};

/** The test as a library brings it that was written and read again. */
function readAgain(test: unknown): PackTest {
  const [stop, ...others] = demoPack.stops;
  const text = JSON.stringify({ ...demoPack, stops: [{ ...stop, tests: [test] }, ...others] });
  const read = readPackText(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const pack: Pack = read.value;
  const back = pack.stops[0]?.tests?.[0];
  if (back === undefined) throw new Error("no test");
  return back;
}

it("a kept remark follows the person's units", () => {
  const back = readAgain(typed);
  expect(remarkTexts(back, "in").map(withPlainSpaces)).toEqual([
    "The depths were moved by 0.10 in so that the force begins at 0.",
  ]);
  expect(remarkTexts(back, "mm").map(withPlainSpaces)).toEqual([
    "The depths were moved by 2.5 mm so that the force begins at 0.",
  ]);
});

it("a test of an older version still opens, its remarks as they were kept", () => {
  for (const unit of ["in", "mm"] as const)
    expect(remarkTexts(readAgain(old), unit)).toEqual(old.remarks);
});

it("what a later version tells in quantities unknown here is read as it tells it in mm and N", () => {
  const later = { ...typed, remarkSentences: [["It took ", { kind: "brightness", value: 3 }]] };
  expect(remarkTexts(readAgain(later), "in")).toEqual(old.remarks);
});

it("a quantity without a number is refused", () => {
  const broken = { ...typed, remarkSentences: [["It took ", { kind: "length", value: null }]] };
  expect(() => readAgain(broken)).toThrow("stop.tests");
});

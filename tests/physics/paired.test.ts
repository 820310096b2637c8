import { expect, it } from "vitest";
import { paired } from "../../src/physics/paired.ts";

it("pairs two lists place by place, as far as the shorter one goes", () => {
  expect(paired(["a", "b", "c"], [1, 2])).toEqual([
    ["a", 1],
    ["b", 2],
  ]);
  expect(paired(["a"], Float64Array.of(Number.NaN, 2))).toEqual([["a", Number.NaN]]);
  expect(paired([], [1])).toEqual([]);
});

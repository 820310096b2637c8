import { describe, expect, it } from "vitest";
import {
  compareForecasts,
  leastTrouble,
  proposed,
} from "../../../src/physics/remeasure/proposed.ts";

const forecast = (settlesVerdict: number, settlesQuestion: number, removed: number) => ({
  settlesVerdict,
  settlesQuestion,
  removed,
});
const before = (one: readonly number[], other: readonly number[]) => {
  const [a, b] = [one, other].map(([x = 0, y = 0, z = 0]) => forecast(x, y, z));
  if (a === undefined || b === undefined) throw new Error("two");
  return [Math.sign(compareForecasts(a, b)), Math.sign(compareForecasts(b, a))];
};

describe("which reading goes first", () => {
  it.each<[string, number[], number[]]>([
    ["more often settles the verdict", [0.5, 0.1, 0.1], [0.4, 0.9, 0.9]],
    ["settles the verdict as often, the question more", [0.5, 0.4, 0.1], [0.5, 0.3, 0.9]],
    ["settles as often, takes away more", [0.5, 0.4, 0.2], [0.5, 0.4, 0.1]],
    ["differs by less than a hundredth, takes away more", [0.501, 0.4, 0.2], [0.504, 0.404, 0.1]],
    ["differs by a hundredth of the question", [0, 0.02, 0.1], [0, 0.01, 0.9]],
    ["settles at all", [0.01, 0, 0], [0, 0.9, 0.9]],
  ])("the one that %s", (_, first, second) => {
    expect(before(first, second)).toEqual([-1, 1]);
  });

  it("none where they do the same", () => {
    expect(before([0.5, 0.4, 0.2], [0.5, 0.4, 0.2])).toEqual([0, 0]);
  });
});

describe("the least troublesome way", () => {
  const of = (...removed: readonly number[]) =>
    leastTrouble(removed.map((each) => ({ forecast: forecast(0, 0, each) })))?.forecast.removed;

  it("is the first that takes away nine tenths of what the best does", () => {
    expect(of(0.1, 0.5, 0.52)).toBe(0.5);
    expect(of(0.4, 0.5)).toBe(0.5);
    expect(of(0.9, 1)).toBe(0.9);
    expect(of(0.5, 0.1)).toBe(0.5);
    expect(of(0.3)).toBe(0.3);
  });

  it("is the first where none takes anything away, and none of none", () => {
    expect(of(0, 0)).toBe(0);
    expect(of()).toBeUndefined();
  });
});

describe("the readings that are proposed", () => {
  interface One {
    readonly id: string;
    readonly chance: number;
    readonly forecast: ReturnType<typeof forecast>;
  }
  const one = (id: string, chance: number, removed = 0.5): One => ({
    id,
    chance,
    forecast: forecast(chance, 0, removed),
  });
  const chosenOf = (found: readonly One[], together = (some: readonly One[]) => sum(some)) => {
    const { chosen, settlesAll } = proposed(found, together);
    return { ids: chosen.map(({ id }) => id).join(" "), settlesAll };
  };
  const sum = (some: readonly One[]) => some.reduce((all, { chance }) => all + chance, 0);

  it("are all that are worth it until they are sure enough together", () => {
    expect(chosenOf([one("a", 0.5), one("b", 0.25)])).toEqual({ ids: "a b", settlesAll: 0.75 });
    expect(chosenOf([one("a", 0.95), one("b", 0.02)]).ids).toBe("a");
    expect(chosenOf([one("a", 0.94), one("b", 0.02)]).ids).toBe("a b");
    expect(chosenOf([])).toEqual({ ids: "", settlesAll: 0 });
  });

  it("are worth it by any one of three: doubt removed, question or verdict settled", () => {
    const none = () => 0;
    const by = (...shares: readonly [number, number, number]) =>
      chosenOf([{ id: "a", chance: 0, forecast: forecast(...shares) }], none).ids;
    expect([by(0.05, 0, 0), by(0, 0.05, 0), by(0, 0, 0.05)]).toEqual(["a", "a", "a"]);
    expect(by(0.04, 0.04, 0.04)).toBe("");
  });

  it("are many small ones as well where only together they make a difference", () => {
    const small = ["a", "b", "c"].map((id) => one(id, 0.03, 0.01));
    // All or nothing: until the last is taken, a chance of 0.5 is to be had.
    const onlyAll = (some: readonly One[]) => (some.length === 3 ? 0.5 : 0);
    expect(chosenOf(small, onlyAll)).toEqual({ ids: "a b c", settlesAll: 0.5 });
    // By steps: once less than a twentieth is left to be had, no more.
    const bySteps = (some: readonly One[]) => [0, 0.03, 0.06, 0.09][some.length] ?? 0;
    expect(chosenOf(small, bySteps)).toEqual({ ids: "a b", settlesAll: 0.09 });
    expect(chosenOf(small.slice(0, 1), sum)).toEqual({ ids: "", settlesAll: 0.03 });
    // Exactly a twentieth is still a difference.
    expect(chosenOf(small, (some) => (some.length === 3 ? 0.05 : 0)).ids).toBe("a b c");
  });

  it("settle as much as is reached by them, or by all", () => {
    // A small one passed over may still be counted among all; one that harms is not.
    expect(chosenOf([one("a", 0.5), one("b", 0.01, 0)]).settlesAll).toBeCloseTo(0.51, 12);
    const harmed = (some: readonly One[]) => (some.length === 1 ? 0.96 : 0.9);
    expect(chosenOf([one("a", 0.9), one("b", 0.9)], harmed)).toEqual({
      ids: "a",
      settlesAll: 0.96,
    });
  });
});

import { beforeEach, expect, it, vi } from "vitest";
import { latelyFirst, noteStop, stopsLately } from "../../../src/screens/choosing/stopsLately.ts";

beforeEach(() => localStorage.clear());

it("the last three stops come first, the last one before the others; the rest stay in order", () => {
  for (const id of ["a", "b", "c", "d", "b"]) noteStop(id);
  expect(stopsLately()).toEqual(["b", "d", "c"]);
  const stops = ["a", "b", "c", "d", "e"].map((id) => ({ id }));
  expect(latelyFirst(stops, stopsLately()).map(({ id }) => id)).toEqual(["b", "d", "c", "a", "e"]);
  expect(latelyFirst(stops, [])).toEqual(stops);
});

it("a stop that the library has no more is passed over", () => {
  noteStop("gone");
  expect(latelyFirst([{ id: "a" }, { id: "b" }], stopsLately()).map(({ id }) => id)).toEqual([
    "a",
    "b",
  ]);
});

it("nothing is remembered where the browser keeps nothing, or what it keeps is damaged", () => {
  localStorage.setItem("stopfit.stopsLately", '{"a":1}');
  expect(stopsLately()).toEqual([]);
  localStorage.setItem("stopfit.stopsLately", "[1,null]");
  expect(stopsLately()).toEqual([]);
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new Error("refused");
    },
  });
  expect(() => noteStop("a")).not.toThrow();
  expect(stopsLately()).toEqual([]);
  vi.unstubAllGlobals();
});

import { cleanup, render, screen } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { Known } from "../../../src/screens/guide/Known.tsx";
import { isPractised, noteMeasured } from "../../../src/screens/guide/practice.ts";
import { changePreferences, forgetPreferencesInMemory } from "../../../src/screens/preferences.ts";

beforeEach(() => {
  localStorage.clear();
  forgetPreferencesInMemory();
});

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const show = () =>
  render(
    <Known summary="How to measure it">
      <p>From A to B.</p>
    </Known>,
  );

it("three different checks make practice, one check three times does not", () => {
  for (const id of ["a", "a", "a", "b"]) noteMeasured(id);
  expect(isPractised()).toBe(false);
  noteMeasured("c");
  expect(isPractised()).toBe(true);
});

it("what is known then is folded, a tap away; before, it stands there", () => {
  show();
  expect(document.querySelector("details")).toBeNull();
  screen.getByText("From A to B.");
  cleanup();
  for (const id of ["a", "b", "c"]) noteMeasured(id);
  show();
  expect(document.querySelector("details")?.open).toBe(false);
  expect(screen.getByText("How to measure it").closest("details")?.textContent).toContain(
    "From A to B.",
  );
});

it("nothing is folded for who wants every step explained", () => {
  for (const id of ["a", "b", "c"]) noteMeasured(id);
  changePreferences({ explain: true });
  expect(isPractised()).toBe(false);
  show();
  expect(document.querySelector("details")).toBeNull();
});

it("nothing is folded where the browser keeps nothing, or what it keeps is damaged", () => {
  localStorage.setItem("stopfit.measured", '{"a":1}');
  expect(isPractised()).toBe(false);
  localStorage.setItem("stopfit.measured", "[1,2,3]");
  expect(isPractised()).toBe(false);
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new Error("refused");
    },
    setItem: () => {
      throw new Error("refused");
    },
  });
  expect(() => noteMeasured("a")).not.toThrow();
  expect(isPractised()).toBe(false);
});

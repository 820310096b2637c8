import { afterEach, expect, it } from "vitest";
import { isMarkedOld, isOldBrowser } from "../../src/screens/oldBrowser.ts";

const { hasOwn } = Object;
const css = globalThis.CSS;
const modern = { ...css, supports: () => true } as unknown as typeof CSS;

afterEach(() => {
  Object.hasOwn = hasOwn;
  globalThis.CSS = css;
  document.documentElement.removeAttribute("data-too-old");
  document.body.innerHTML = "";
});

it("a browser with all that is needed goes on", () => {
  globalThis.CSS = modern;
  expect(isOldBrowser()).toBe(false);
  expect(isMarkedOld()).toBe(false);
});

it.each([
  ["a method", () => Reflect.deleteProperty(Object, "hasOwn")],
  [
    "a selector",
    () => {
      globalThis.CSS = { ...modern, supports: () => false } as unknown as typeof CSS;
    },
  ],
])("one that lacks %s says which browsers do, and nothing of the app starts", (_, lack) => {
  globalThis.CSS = modern;
  lack();
  document.body.innerHTML = '<div id="app"></div>';
  expect(isOldBrowser()).toBe(true);
  expect(isMarkedOld()).toBe(true);
  document.dispatchEvent(new Event("DOMContentLoaded"));
  expect(document.getElementById("app")?.textContent).toMatch(
    /too old for Stopfit.*iOS 15\.4, Chrome 108 or Firefox 121/,
  );
});

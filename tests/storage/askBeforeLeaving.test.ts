import { afterEach, describe, expect, it, vi } from "vitest";
import { askBeforeLeaving } from "../../src/storage/askBeforeLeaving.ts";

const holders = [{}, {}];
afterEach(() => {
  for (const holder of holders) askBeforeLeaving(holder, false);
  vi.unstubAllGlobals();
});

/** Does the browser ask before this page is closed? */
function asks(): boolean {
  const event = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(event);
  return event.defaultPrevented;
}

describe("a page that is closed", () => {
  it("is asked about while any one has something that is not kept, and no longer", () => {
    vi.stubGlobal("window", new EventTarget());
    const [one = {}, two = {}] = holders;
    expect(asks()).toBe(false);
    askBeforeLeaving(one, true);
    askBeforeLeaving(one, true);
    askBeforeLeaving(two, true);
    expect(asks()).toBe(true);
    askBeforeLeaving(one, false);
    expect(asks()).toBe(true);
    askBeforeLeaving(two, false);
    expect(asks()).toBe(false);
    askBeforeLeaving(two, false);
    expect(asks()).toBe(false);
  });

  it("is no matter where there is no page", () => {
    vi.stubGlobal("window", undefined);
    expect(() => askBeforeLeaving(holders, true)).not.toThrow();
    expect(() => askBeforeLeaving(holders, false)).not.toThrow();
  });
});

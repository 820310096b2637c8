import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { AwayTexts } from "../../src/storage/awayTexts.ts";

beforeEach(() => localStorage.clear());
afterEach(() => vi.unstubAllGlobals());

const check = (name: string, updatedAt = "2026-05-02T10:00:00.000Z"): StoredCheck => ({
  ...newStoredCheck(name),
  updatedAt,
});
const away = (stored: StoredCheck, key = "a") => ({ key, stored, base: null });
const mark = "checks.away ";

describe("texts put away as a page is left", () => {
  it("stand under the database's name and their key, with the check and what it grew from", () => {
    const texts = new AwayTexts("checks");
    localStorage.setItem("settings", "{}");
    localStorage.setItem("checks.awayward", "{}");
    const [stored, base] = [check("one"), check("before")];
    texts.put({ key: "a", stored, base });
    expect(texts.places()).toEqual([`${mark}a`]);
    const kept = JSON.parse(localStorage.getItem(`${mark}a`) ?? "");
    expect(kept).toMatchObject({ stored: { name: "one" }, base: { name: "before" } });
    texts.put(away(check("two"), "b"));
    expect(JSON.parse(localStorage.getItem(`${mark}b`) ?? "")).toMatchObject({ base: null });
    expect(new AwayTexts("other").places()).toEqual([]);
  });

  it("go once what they hold is written, or something newer", () => {
    for (const written of ["2026-05-02T10:00:00.000Z", "2026-05-02T10:00:00.001Z"]) {
      const texts = new AwayTexts("checks");
      texts.put(away(check("one")));
      texts.drop("a", check("one", written));
      expect(texts.places()).toEqual([]);
    }
  });

  it("stay where something newer was put away, or another page did so", () => {
    const texts = new AwayTexts("checks");
    texts.put(away(check("one")));
    texts.drop("a", check("one", "2026-05-02T09:59:59.999Z"));
    texts.drop("b", check("one", "2030-05-02T10:00:00.000Z"));
    new AwayTexts("checks").drop("a", check("one", "2030-05-02T10:00:00.000Z"));
    expect(texts.places()).toEqual([`${mark}a`]);
    // What is dropped once is another page's from then on.
    texts.drop("a", check("one"));
    localStorage.setItem(`${mark}a`, "{}");
    texts.drop("a", check("one"));
    expect(texts.places()).toEqual([`${mark}a`]);
  });

  it("are none, without a fault, where the browser refuses them", () => {
    const texts = new AwayTexts("checks");
    const refused = () => {
      throw new Error("refused");
    };
    vi.stubGlobal(
      "localStorage",
      new Proxy({}, { ownKeys: refused, get: () => refused, getOwnPropertyDescriptor: refused }),
    );
    expect(() => texts.put(away(check("one")))).not.toThrow();
    expect(texts.places()).toEqual([]);
    expect(() => texts.drop("a", check("one"))).not.toThrow();
  });
});

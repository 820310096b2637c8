import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sources } from "./sources.ts";
import { publishedSource } from "./support/published.ts";
import { trustTable, withTable } from "./support/trustTable.ts";

// Each source is compared anew, with as many draws and steps as its figures need.
describe("the page on trust", { timeout: 180_000 }, () => {
  const page = readFileSync(new URL("README.md", import.meta.url), "utf8");

  it("has the table of these comparisons; else: npm run trust-table", () => {
    expect(page).toBe(withTable(page, trustTable(sources)));
  });

  it("has every source of this folder, each with comparisons of its own", () => {
    const files = readdirSync(new URL(".", import.meta.url)).filter((name) => name.endsWith(".ts"));
    const others = ["sources.ts", "writeTable.ts"];
    const listed = readFileSync(new URL("sources.ts", import.meta.url), "utf8");
    const unlisted = files.filter(
      (name) =>
        !name.endsWith(".test.ts") && !others.includes(name) && !listed.includes(`"./${name}"`),
    );
    expect(unlisted).toEqual([]);
    expect(new Set(sources.map(({ name }) => name)).size).toBe(sources.length);
    for (const { name, comparisons } of sources) {
      expect(comparisons.length, name).toBeGreaterThan(0);
      expect(new Set(comparisons.map(({ quantity }) => quantity)).size, name).toBe(
        comparisons.length,
      );
    }
  });

  it.each([
    ["a number beyond its tolerance", 1, 1.02, 0.01],
    ["a number that must be the same", 1, 1 + 1e-15, 0],
    ["a word", "ok", "no", 0],
    ["a word for a number", 1, "1", 1],
    ["no number", 1, Number.NaN, 1],
  ])("is refused for %s", (_, wanted, got, tolerance) => {
    const wrong = publishedSource("wrong", "met", (published) => {
      published("quantity", wanted, () => got, tolerance);
    });
    expect(() => trustTable([wrong])).toThrow("quantity");
  });

  it("is refused where it has no place for the table", () => {
    expect(() => withTable("# Trust", "table")).toThrow("no place");
  });
});

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sources } from "./sources.ts";
import { type Compared, type Comparison, compare, publishedSource } from "./support/published.ts";
import { trustTable, withTable } from "./support/trustTable.ts";

/** Each comparison is made once, for its own test and for the table. */
const made = new Map<Comparison, Compared>();
function comparedOnce(comparison: Comparison): Compared {
  const compared = made.get(comparison) ?? compare(comparison);
  made.set(comparison, compared);
  return compared;
}

describe.each(sources)("$name", ({ comparisons }) => {
  it.each(comparisons)("$quantity", (comparison) => {
    const { computed, met } = comparedOnce(comparison);
    expect(met, `${computed}, not ${comparison.published} ± ${comparison.tolerance}`).toBe(true);
  });
});

describe("the page on trust", () => {
  const page = readFileSync(new URL("README.md", import.meta.url), "utf8");

  it("has the table of these comparisons; else: npm run trust-table", () => {
    expect(page).toBe(withTable(page, trustTable(sources, comparedOnce)));
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

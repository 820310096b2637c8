import { describe, expect, it } from "vitest";
import { thoroughSources } from "./sources.ts";
import { compare } from "./support/published.ts";

describe.each(thoroughSources)("$name", ({ comparisons }) => {
  it.each(comparisons)("$quantity", (comparison) => {
    const { computed, met } = compare(comparison);
    expect(met, `${computed}, not ${comparison.published} ± ${comparison.tolerance}`).toBe(true);
  });
});

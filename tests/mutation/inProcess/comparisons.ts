import { expect, it } from "vitest";
import { compare, type PublishedSource } from "../../published/support/published.ts";

function isSource(value: unknown): value is PublishedSource {
  return typeof value === "object" && value !== null && "comparisons" in value;
}

/** The comparisons of a file of tests/published, as tests. */
export function declareComparisons(file: Readonly<Record<string, unknown>>): void {
  for (const source of Object.values(file).filter(isSource)) {
    for (const comparison of source.comparisons) {
      it(`${source.name}: ${comparison.quantity}`, () => {
        expect(compare(comparison).met).toBe(true);
      });
    }
  }
}

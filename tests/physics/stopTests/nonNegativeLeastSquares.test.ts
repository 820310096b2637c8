import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nonNegativeLeastSquares } from "../../../src/physics/stopTests/nonNegativeLeastSquares.ts";

function normal(rows: readonly (readonly number[])[], b: readonly number[]) {
  const n = rows[0]?.length ?? 0;
  const gram = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (const [row, values] of rows.entries()) {
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        gram[i * n + j] = (gram[i * n + j] ?? 0) + (values[i] ?? 0) * (values[j] ?? 0);
      }
      right[i] = (right[i] ?? 0) + (values[i] ?? 0) * (b[row] ?? 0);
    }
  }
  return { gram, right, n };
}

describe("non-negative least squares", () => {
  it("is plain least squares where that is not negative", () => {
    const { gram, right } = normal(
      [
        [1, 1],
        [1, 2],
        [1, 3],
      ],
      [3, 5, 7],
    );
    expect([...nonNegativeLeastSquares(gram, right)]).toEqual([
      expect.closeTo(1, 9),
      expect.closeTo(2, 9),
    ]);
  });

  it("leaves out a part that would be negative", () => {
    const { gram, right } = normal(
      [
        [1, 0],
        [1, 1],
        [1, 2],
      ],
      [4, 3, 2],
    );
    expect([...nonNegativeLeastSquares(gram, right)]).toEqual([expect.closeTo(3, 9), 0]);
  });

  it("keeps a column that is not allowed at 0", () => {
    const { gram, right } = normal(
      [
        [1, 0],
        [0, 1],
      ],
      [2, 3],
    );
    expect([...nonNegativeLeastSquares(gram, right, Uint8Array.of(1, 0))]).toEqual([2, 0]);
  });

  it("meets the conditions of Kuhn and Tucker, whatever the columns", () => {
    const number = fc.double({ min: -5, max: 5, noNaN: true });
    const problem = fc.integer({ min: 1, max: 6 }).chain((n) =>
      fc.record({
        rows: fc.array(fc.array(number, { minLength: n, maxLength: n }), {
          minLength: n + 2,
          maxLength: 12,
        }),
        b: fc.array(number, { minLength: 12, maxLength: 12 }),
      }),
    );
    fc.assert(
      fc.property(problem, ({ rows, b }) => {
        const { gram, right, n } = normal(rows, b);
        const x = nonNegativeLeastSquares(gram, right);
        for (let i = 0; i < n; i++) {
          let gradient = right[i] ?? 0;
          for (let j = 0; j < n; j++) gradient -= (gram[i * n + j] ?? 0) * (x[j] ?? 0);
          const size = Math.sqrt((gram[i * n + i] ?? 0) * 300) + 1e-9;
          expect(x[i]).toBeGreaterThanOrEqual(0);
          // Columns that all but depend on others may stay out: their gradient is small all the same.
          expect(gradient / size).toBeLessThan(1e-3);
          if ((x[i] ?? 0) > 0) expect(Math.abs(gradient) / size).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 200 },
    );
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledPlaces, valuesAt } from "../../../src/physics/stopTests/sampled.ts";

describe("a fair sample", () => {
  it("is all where there are few, the first where one is wanted, none of none", () => {
    expect([...sampledPlaces(3, 10)]).toEqual([0, 1, 2]);
    expect([...sampledPlaces(5, 1)]).toEqual([0]);
    expect([...sampledPlaces(1, 5)]).toEqual([0]);
    expect([...sampledPlaces(0, 5)]).toEqual([]);
  });

  it("is evenly spread from the first to the last", () => {
    expect([...sampledPlaces(10, 4)]).toEqual([0, 3, 6, 9]);
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 5000 }),
        fc.integer({ min: 2, max: 300 }),
        (all, most) => {
          const places = sampledPlaces(all, most);
          expect(places).toHaveLength(Math.min(all, most));
          expect(places[0]).toBe(0);
          expect(places.at(-1)).toBe(all - 1);
          const step = (all - 1) / (places.length - 1);
          for (const [index, place] of places.entries()) {
            expect(Math.abs(place - index * step)).toBeLessThan(0.5 + 1e-9);
          }
        },
      ),
    );
  });

  it("has its values in its own order", () => {
    expect([...valuesAt(Float64Array.of(5, 6, 7, 8), Uint32Array.of(3, 0, 2))]).toEqual([8, 5, 7]);
  });
});

import { describe, expect, it } from "vitest";
import { assessStatic } from "../../../src/physics/assess.ts";
import type { Fitment } from "../../../src/physics/fitment.ts";
import { withStop } from "../../../src/physics/prescription/fitmentWithStop.ts";
import { demoFitment, unwrapped } from "../demoFitments.ts";

const options = { samples: 10_000 };

/** Assessed as one that nobody has looked at before. */
function fresh(fitment: Fitment) {
  return unwrapped(assessStatic(structuredClone(fitment), options));
}

const names = ["two-arms-measured", "checked-by-hand", "strut-and-arm", "stop-on-the-arm-missing"];

describe("a corner that several questions share", () => {
  it.each(names)("answers each as if it were asked alone: %s", (name) => {
    const fitment = demoFitment(name);
    const { tol } = fitment.stop.freeHeight;
    const taller = { ...fitment.stop, freeHeight: { values: [95], tol }, usableCompressionMm: 40 };
    const { fullTravel: _, ...notByHand } = fitment;
    const { stopLean = { values: [0], tol: 1 } } = fitment.layout.readings;
    const leaning: Fitment = {
      ...fitment,
      layout: {
        ...fitment.layout,
        readings: {
          ...fitment.layout.readings,
          stopLean: { ...stopLean, values: stopLean.values.map((lean) => lean + 5) },
        },
      },
    };
    const asked: readonly Fitment[] = [
      fitment,
      withStop(fitment, taller, 10),
      { ...fitment, stop: taller },
      notByHand,
      leaning,
      fitment,
    ];
    for (const each of asked) {
      expect(unwrapped(assessStatic(each, options))).toEqual(fresh(each));
    }
  });
});

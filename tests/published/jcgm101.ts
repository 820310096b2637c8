import { CoverageIntervals } from "../../src/physics/uncertainty/coverageIntervals.ts";
import {
  type DrawnReading,
  standardUncertainty,
} from "../../src/physics/uncertainty/drawnReading.ts";
import { ReadingDraws } from "../../src/physics/uncertainty/readingDraws.ts";
import { publishedSource } from "./support/published.ts";

/*
 * JCGM 101:2008, 9.2.2 and 9.2.3: the sum of four variables of standard uncertainty 1, normal: 95 %
 * within ±3.92; rectangular: ±3.88 (recalled, from memory; 3.8785 recomputed by convolution).
 */

const draws = 400_000;

/** Scatter of a 95 % end of the sum over repeated runs is about 0.01 at this many draws. */
const scatter = 0.035;

const normal = { halfWidth: 0, standardError: 1 };
const rectangular = { halfWidth: Math.sqrt(3), standardError: 0 };

function endsOfSum(each: Omit<DrawnReading, "id" | "mean">, probability?: number) {
  const sum = new Float64Array(draws);
  for (let index = 0; index < 4; index++) {
    const drawn = new ReadingDraws({ id: `x${index}`, mean: 0, ...each }, 101, draws);
    for (let draw = 0; draw < draws; draw++) {
      sum[draw] = (sum[draw] as number) + drawn.at(draw);
    }
  }
  const covered = new CoverageIntervals(1, draws);
  for (const value of sum) covered.add(Float64Array.of(value));
  return covered.intervals(probability)[0] ?? [Number.NaN, Number.NaN];
}

export const jcgm101 = publishedSource(
  "JCGM 101:2008, 9.2.2 and 9.2.3: sums of four variables",
  "from memory",
  (published) => {
    const uncertainty = (each: typeof normal) => () => standardUncertainty({ mean: 0, ...each });
    published("standard uncertainty of a normal variable", 1, uncertainty(normal), 1e-12);
    published("standard uncertainty of a rectangular one", 1, uncertainty(rectangular), 1e-12);
    published("normal: lower end of 95 %", -3.92, () => endsOfSum(normal)[0], scatter);
    published("normal: upper end of 95 %", 3.92, () => endsOfSum(normal)[1], scatter);
    published("rectangular: lower end of 95 %", -3.8785, () => endsOfSum(rectangular)[0], scatter);
    published("rectangular: upper end of 95 %", 3.8785, () => endsOfSum(rectangular)[1], scatter);
    published("rectangular: every draw within ±4·√3", "so", () => {
      const [low, high] = endsOfSum(rectangular, 1);
      return low >= -4 * Math.sqrt(3) && high <= 4 * Math.sqrt(3) ? "so" : "not so";
    });
  },
);

import { describe, expect, test } from "vitest";
import { stopDamping } from "../../../src/physics/stop/damping.ts";
import { stopCurve } from "../../../src/physics/stop/stopCurve.ts";
import { analyseRows } from "../../../src/physics/stopTests/analyseRows.ts";
import { curveThrough } from "../../../src/physics/stopTests/staticCurve.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { recordStop } from "../../../src/records/pack/pack.ts";
import { rowsOf } from "./generatedTests.ts";
import { given } from "./outcomes.ts";

/** Everything recognised and put right, none of which is there to be put right. */
const corrections = [
  "forceReversed",
  "depthReversed",
  "speedReversed",
  "columnsSwapped",
  "forceZero",
  "depthZero",
  "speedUnsigned",
];

describe.each(demoPack.stops.map((stop) => [stop.name, recordStop(stop)] as const))(
  "%s of the demonstration pack, tested at the bench",
  (_, stop) => {
    const curve = given(stopCurve(stop));
    const damping = given(stopDamping(stop));
    const deepest = stop.usableCompressionMm;
    const greatest = curve.force(deepest);
    const known = {
      force: (depth: number) => curve.force(depth),
      damping: (depth: number) =>
        [damping.coefficient(depth, 1), damping.coefficient(depth, -1)] as const,
    };
    const held = Array.from({ length: 13 }, (_, place) => (place * deepest) / 12);
    const swept = Array.from({ length: 601 }, (_, place) => (place * deepest) / 600);

    test.each([
      ["held depths, no noise", held, 0, 0.002],
      ["swept, no noise", swept, 0, 0.01],
      ["held depths, noise of 0.3 %", held, 0.003, 0.012],
      ["swept, noise of 0.3 %", swept, 0.003, 0.012],
    ] as const)("%s: its curve and damping, and nothing put right", (_, depths, noise, off) => {
      const rows = rowsOf({
        depths,
        speeds: [0, 150, 450, -150, -450],
        repeats: 3,
        noiseN: noise * greatest,
        seed: 31,
        stop: known,
      });
      const found = given(analyseRows(rows));
      expect(
        found.remarks.map(({ code }) => code).filter((code) => corrections.includes(code)),
      ).toEqual([]);
      const recovered = curveThrough(given(found.staticCurve).points);
      for (const share of [0.1, 0.25, 0.5, 0.75, 0.95]) {
        const depth = share * deepest;
        const away = Math.abs((recovered?.force(depth) ?? 0) - curve.force(depth));
        expect(away).toBeLessThan(off * greatest);
      }
      const { rows: table } = given(found.damping);
      for (const row of table.filter(({ depthMm }) => depthMm > 0.3 * deepest)) {
        for (const [value, direction] of [
          [row.compressing, 1],
          [row.rebounding, -1],
        ] as const) {
          if (value === null) continue;
          const truth = damping.coefficient(row.depthMm, direction);
          const level = deepest / 40;
          const change =
            Math.abs(
              damping.coefficient(row.depthMm + level, direction) -
                damping.coefficient(row.depthMm - level, direction),
            ) +
            (off * greatest) / 150;
          expect(Math.abs(value.coefficient - truth)).toBeLessThan(
            4.5 * value.standardError + change + 1e-6,
          );
        }
      }
    });
  },
);

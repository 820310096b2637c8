import { assessStatic } from "../../src/physics/assess.ts";
import type { CornerAssessment, Fitment } from "../../src/physics/fitment.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import { publishedSource } from "./support/published.ts";

/*
 * JCGM 106:2012, clause 7: for a normal measurand P(conforming) = Φ((y − limit)/u); clause 8 with a
 * threshold of 0.95: accepted where y ≥ limit + 1.645 u. Recalled, from memory.
 */

const exact = (value: number) => ({ values: [value], tol: 0 });

/** Φ by Simpson's rule on the density. */
function normalDistribution(x: number): number {
  const strips = 2000;
  const width = (x + 10) / strips;
  let sum = 0;
  for (let strip = 0; strip < strips; strip++) {
    const density = (place: number) => Math.exp(-0.5 * place * place) / Math.sqrt(2 * Math.PI);
    const from = -10 + strip * width;
    sum += (width / 6) * (density(from) + 4 * density(from + width / 2) + density(from + width));
  }
  return sum;
}

/**
 * A strut whose full stop was found by hand with a block, at 60 mm: the reserve is limit − 60.
 * The limit is read twice, 2d apart: mean m, u = s/√2 = d, with no tool tolerance: a normal reserve.
 */
function upright(limit: number, uncertainty: number): Fitment {
  return {
    use: "daily",
    layout: { kind: "strut", readings: {} },
    corners: [
      {
        side: "left",
        gap: exact(30),
        limits: [
          {
            kind: "tyre",
            at: "wheel",
            reading: { values: [limit - uncertainty, limit + uncertainty], tol: 0 },
          },
        ],
      },
    ],
    stop: {
      name: "Test stop",
      duty: "impact",
      freeHeight: exact(60),
      usableCompressionMm: 30,
      usableTolMm: 0,
      curve: [[30, 3000]],
      damping: null,
      testedAtSpeed: false,
    },
    fullTravel: {
      measure: "wheelTravel",
      movement: "both",
      corners: [
        { side: "left", contacts: {}, block: { reading: exact(60), blockHeight: exact(30) } },
      ],
    },
  };
}

function corner(limit: number, uncertainty: number): CornerAssessment {
  const { corners } = unwrapped(assessStatic(upright(limit, uncertainty), { samples: 200_000 }));
  return corners[0] as CornerAssessment;
}

export const jcgm106 = publishedSource(
  "JCGM 106:2012, clauses 7 and 8",
  "from memory",
  (published) => {
    for (const [uncertainty, by] of [
      [2, 1],
      [2, -2],
      [3, 1.645],
      [3, 0],
      [1, 2.5],
      [4, -0.5],
    ] as const) {
      published(
        `P(reserve ≥ 5 mm), ${by} u above with u = ${uncertainty} mm`,
        normalDistribution(by),
        () => Number(corner(65 + by * uncertainty, uncertainty).clearanceProbability),
        0.005,
      );
    }
    for (const [limit, state] of [
      [65 + 1.8 * 2, "ok"],
      [65 + 1.4 * 2, "care"],
      [60 + 1.8 * 2, "care"],
      [60 + 1.4 * 2, "unsure"],
      [60 - 1.4 * 2, "unsure"],
      [60 - 1.8 * 2, "no"],
    ] as const) {
      published(`decision at 0.95 and 0.05, a limit at ${limit} mm, u = 2 mm`, state, () =>
        String(corner(limit, 2).checks.find(({ id }) => id === "clearance")?.state),
      );
    }
  },
);

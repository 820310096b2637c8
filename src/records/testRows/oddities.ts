import type { Message } from "../../physics/sentence.ts";
import {
  curveThrough,
  movedByTold,
  type Remark,
  type TestAnalysis,
} from "../../physics/stopTests/index.ts";
import * as messages from "../../words/compiled/records/testRows.ts";
import { toModel } from "../entry/units.ts";
import type { KnownStop, ReadTest } from "./testFile.ts";

/** Further than this from what is known, by ratio, a number is asked about. */
const farRatio = 3;
/** Stops are made from 50 to 6000 lbf/in; here in N/mm. Common practice. */
const [softest, stiffest] = [toModel(50, "lbf/in"), toModel(6000, "lbf/in")] as const;
/** No stop is pressed deeper, mm. Common practice. */
const deepestMm = 200;
/** Between these a test at speed has its fastest row, mm/s. Common practice. */
const [slowestTest, fastestTest] = [40, 6000] as const;

/**
 * What looks like a slip of the file: a depth beyond the stop's height, a stiffness that no stop has, a
 * curve far from the stop's present one, speeds that no test is made at. Each asks to be read before the test is kept.
 */
export function oddities(analysis: TestAnalysis, stop: KnownStop | null): readonly Remark[] {
  const remarks: Remark[] = [];
  const depth = analysis.depthRangeMm[1];
  const height = stop?.freeHeightMm ?? deepestMm;
  if (depth >= height) remarks.push(depthOdd(depth, stop?.freeHeightMm ?? null));
  const speed = Math.max(0, ...analysis.speeds.map(({ speedMmPerS }) => Math.abs(speedMmPerS)));
  const isAtSpeed = speed > analysis.staticSpeedMmPerS;
  if ((isAtSpeed && speed < slowestTest) || speed > fastestTest) remarks.push(speedUnlikely(speed));
  if (!analysis.staticCurve.ok) return remarks;
  const { points } = analysis.staticCurve.value;
  const curve = curveThrough(points);
  const deepest = points.at(-1)?.depthMm ?? 0;
  if (curve === null || !(deepest > 0)) return remarks;
  const secant = curve.force(deepest / 2) / (deepest / 2);
  if (secant * farRatio < softest || secant > farRatio * stiffest)
    remarks.push(stiffnessOdd(secant));
  if (stop === null) return remarks;
  const known = curveThrough(
    stop.curve
      .filter(([mm, force]) => mm > 0 && force > 0)
      .map(([depthMm, forceN]) => ({ depthMm, forceN, standardErrorN: 0, rows: 1 })),
  );
  const shared = Math.min(deepest, stop.curve.at(-1)?.[0] ?? 0);
  if (known === null || !(shared > 0)) return remarks;
  const ratio = curve.force(0.7 * shared) / known.force(0.7 * shared);
  if (ratio > farRatio || ratio * farRatio < 1) remarks.push(curveOdd(ratio));
  return remarks;
}

/** The file's own speeds held against depth over time. */
export function speedOddity({ test, speedMmPerS }: ReadTest): readonly Remark[] {
  if (test.kind !== "cycles" || speedMmPerS === undefined) return [];
  const ratio = movedByTold(test.timeS, test.displacementMm, speedMmPerS);
  if (Number.isNaN(ratio) || (ratio < farRatio && ratio * farRatio > 1)) return [];
  return [
    {
      code: "speedOdd",
      asks: true,
      sentence: [messages.byDepthOverTime({ times: timesText(ratio) })],
    },
  ];
}

/** "24 times", "17 % of". */
function timesText(ratio: number): Message {
  return ratio > 1
    ? messages.times({ ratio: { kind: "count", value: ratio } })
    : messages.ofWord({ ratio: { kind: "share", value: ratio } });
}

function depthOdd(depthMm: number, heightMm: number | null): Remark {
  return {
    code: "depthOdd",
    asks: true,
    sentence:
      heightMm === null
        ? [messages.testGoesDeepDeeper({ depthMm: { kind: "length", value: depthMm } })]
        : [
            messages.testGoesDeepBut({
              depthMm: { kind: "length", value: depthMm },
              heightMm: { kind: "length", value: heightMm },
            }),
          ],
  };
}

function speedUnlikely(speed: number): Remark {
  return {
    code: "speedUnlikely",
    asks: true,
    sentence: [
      messages.fastestRowsMoveAt({
        speed: { kind: "speed", value: speed },
        slowestTest: { kind: "speed", value: slowestTest },
        fastestTest: { kind: "speed", value: fastestTest },
      }),
    ],
  };
}

function stiffnessOdd(rate: number): Remark {
  return {
    code: "stiffnessOdd",
    asks: true,
    sentence: [
      messages.byThisFileStop({
        rate: { kind: "rate", value: rate },
        softest: { kind: "rate", value: softest },
        stiffest: { kind: "rate", value: stiffest },
      }),
    ],
  };
}

function curveOdd(ratio: number): Remark {
  return {
    code: "curveOdd",
    asks: true,
    sentence: [messages.forcesAreThoseStop({ times: timesText(ratio) })],
  };
}

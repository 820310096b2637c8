import { type Outcome, succeed } from "../outcome.ts";
import { type StopAtSpeed, stopAtSpeed } from "../stop/stopAtSpeed.ts";
import type { StopCurve } from "../stop/stopCurve.ts";
import type { Remark, TestAnalysis } from "./benchTest.ts";
import { type FoundStop, foundStop } from "./foundStop.ts";
import { type FreeMassHit, freeMassHit } from "./freeMassHit.ts";
import { curveThrough } from "./staticCurve.ts";
import type { DrawnLoss } from "./stopLoss.ts";

export interface PredictedHit {
  readonly hit: FreeMassHit;
  /** ± of each, 95 %, from the other laws that the test allows; null where it gives none. */
  readonly doubt: FreeMassHit | null;
  readonly remarks: readonly Remark[];
}

/** A hit faster than this many times the fastest row is an extrapolation that must be told. */
const fasterThanTested = 1.5;
const fewestDraws = 20;
/**
 * What a hit at four times the tested speed may be off by the choice of the law, 95 %, as a share: found on
 * simulated stops of one, two and many branches. Grows with the logarithm of the speed's ratio.
 */
const lawDoubt = { peak: 0.06, leaving: 0.1 } as const;
const lawDoubtRatio = 4;

/**
 * The hit of a free mass, kg and m/s, on a stop as its test found it. Null without a static curve. Errors:
 * those of `freeMassHit`.
 */
export function predictedHit(
  analysis: TestAnalysis,
  massKg: number,
  speedMPerS: number,
): Outcome<PredictedHit | null> {
  const found = foundStop(analysis);
  const curve = analysis.staticCurve.ok ? curveThrough(analysis.staticCurve.value.points) : null;
  if (found === null || curve === null) return succeed(null);
  const hit = hitOf(found, curve, massKg, speedMPerS);
  if (!hit.ok) return hit;
  const draws = analysis.kind === "timed" && analysis.loss.ok ? analysis.loss.value.draws : [];
  return succeed({
    hit: hit.value,
    doubt: doubtOf(found, draws, curve, massKg, speedMPerS, hit.value),
    remarks: remarksOf(found, hit.value, speedMPerS),
  });
}

function hitOf(
  loss: DrawnLoss & { readonly testedAtSpeed: boolean },
  curve: StopCurve,
  massKg: number,
  speedMPerS: number,
): Outcome<FreeMassHit> {
  const parts = partsOf(loss);
  return parts.ok ? freeMassHit(curve, parts.value, massKg, speedMPerS) : parts;
}

function partsOf(loss: DrawnLoss & { readonly testedAtSpeed: boolean }): Outcome<StopAtSpeed> {
  return stopAtSpeed({
    name: "",
    duty: "impact",
    freeHeight: { values: [1], tol: 0 },
    usableCompressionMm: 1,
    curve: [],
    damping: loss.damping,
    testedAtSpeed: loss.testedAtSpeed,
    restLoss: loss.restLoss,
    staticShare: loss.staticShare,
    branches: loss.branches,
  });
}

function doubtOf(
  found: FoundStop,
  draws: readonly DrawnLoss[],
  curve: StopCurve,
  massKg: number,
  speedMPerS: number,
  best: FreeMassHit,
): FreeMassHit | null {
  if (!found.testedAtSpeed || draws.length < fewestDraws) return null;
  const hits = draws.flatMap((draw) => {
    const hit = hitOf({ ...draw, testedAtSpeed: true }, curve, massKg, speedMPerS);
    return hit.ok ? [hit.value] : [];
  });
  if (hits.length < fewestDraws) return null;
  const beyond = Math.max(1, (1000 * speedMPerS) / Math.max(found.fastestMmPerS, 1e-9));
  const faster = Math.log(beyond) / Math.log(lawDoubtRatio);
  const width = (of: (hit: FreeMassHit) => number, law: number) => {
    const away = hits.map((hit) => Math.abs(of(hit) - of(best))).sort((a, b) => a - b);
    const drawn = away[Math.ceil(0.95 * (away.length - 1))] as number;
    return Math.hypot(drawn, law * faster * of(best));
  };
  return {
    peakForceN: width((hit) => hit.peakForceN, lawDoubt.peak),
    // Force times depth is energy: where one is greater the other is less.
    peakCompressionMm: width((hit) => hit.peakCompressionMm, lawDoubt.peak),
    leaveSpeedMmPerS: width((hit) => hit.leaveSpeedMmPerS, lawDoubt.leaving),
    energyInJ: width((hit) => hit.energyInJ, 0),
    // Energy goes with the square of the speed.
    energyOutJ: width((hit) => hit.energyOutJ, 2 * lawDoubt.leaving),
  };
}

function remarksOf(found: FoundStop, hit: FreeMassHit, speedMPerS: number): readonly Remark[] {
  const remarks: Remark[] = [
    {
      code: "hitSimulated",
      sentence: [
        "Predicted hits of this program were checked on simulated stops, not on real ones.",
      ],
    },
  ];
  const deepest = found.curve.at(-1)?.[0] ?? 0;
  if (hit.peakCompressionMm > deepest) {
    remarks.push({
      code: "hitDeeper",
      sentence: [
        "The hit goes ",
        { kind: "length", value: hit.peakCompressionMm },
        " deep, the static curve only to ",
        { kind: "length", value: deepest },
        ": beyond it the curve goes straight on. Test deeper.",
      ],
    });
  }
  if (!found.testedAtSpeed) {
    remarks.push({
      code: "hitUndamped",
      sentence: ["The hit is that of an undamped stop: no loss at speed is known of it."],
    });
  } else if (1000 * speedMPerS > fasterThanTested * found.fastestMmPerS) {
    remarks.push({
      code: "hitFaster",
      sentence: [
        "The hit begins at ",
        { kind: "speed", value: 1000 * speedMPerS },
        ", the fastest row of the test at ",
        { kind: "speed", value: found.fastestMmPerS },
        ": what lies between is foretold, not tested.",
      ],
    });
  }
  return remarks;
}

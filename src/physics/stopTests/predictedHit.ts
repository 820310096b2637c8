import * as messages from "../../words/compiled/physics/stopTests.ts";
import { type Outcome, succeed } from "../outcome.ts";
import { beyondTest, fasterThanTested, simulatedStops } from "../stop/beyondTest.ts";
import { type StopAtSpeed, stopAtSpeed } from "../stop/stopAtSpeed.ts";
import { type StopCurve, stopCurve } from "../stop/stopCurve.ts";
import { usableFromTest } from "../stop/usableFromTest.ts";
import type { Remark, TestAnalysis } from "./benchTest.ts";
import { type FoundStop, foundStop } from "./foundStop.ts";
import { type FreeMassHit, freeMassHit } from "./freeMassHit.ts";
import type { DrawnLoss } from "./stopLoss.ts";

export interface PredictedHit {
  readonly hit: FreeMassHit;
  /** ± of each, 95 %, from the other laws that the test allows; null where it gives none. */
  readonly doubt: FreeMassHit | null;
  readonly remarks: readonly Remark[];
  /** δu by the test alone, mm: beyond it the stop bottoms. */
  readonly usableCompressionMm: number;
}

const fewestDraws = 20;
/** Steps of a drawn hit: their error, below 1e-3, is nothing beside a spread. */
const drawnSteps = 1000;

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
  if (found === null) return succeed(null);
  const usable = usableFromTest(found.curve);
  if (!usable.ok) return usable;
  const curve = stopCurve({ ...testedStop, curve: found.curve, usableCompressionMm: usable.value });
  if (!curve.ok) return curve;
  const hit = hitOf(found, curve.value, massKg, speedMPerS);
  if (!hit.ok) return hit;
  const draws = analysis.kind === "timed" && analysis.loss.ok ? analysis.loss.value.draws : [];
  return succeed({
    hit: hit.value,
    doubt: doubtOf(found, draws, curve.value, massKg, speedMPerS, hit.value),
    remarks: remarksOf(found, hit.value, usable.value, speedMPerS),
    usableCompressionMm: usable.value,
  });
}

function hitOf(
  loss: DrawnLoss & { readonly testedAtSpeed: boolean },
  curve: StopCurve,
  massKg: number,
  speedMPerS: number,
  steps?: number,
): Outcome<FreeMassHit> {
  const parts = partsOf(loss);
  return parts.ok ? freeMassHit(curve, parts.value, massKg, speedMPerS, steps) : parts;
}

function partsOf(loss: DrawnLoss & { readonly testedAtSpeed: boolean }): Outcome<StopAtSpeed> {
  return stopAtSpeed({
    ...testedStop,
    usableCompressionMm: 1,
    curve: [],
    damping: loss.damping,
    testedAtSpeed: loss.testedAtSpeed,
    restLoss: loss.restLoss,
    staticShare: loss.staticShare,
    branches: loss.branches,
  });
}

/** What a test says nothing of. */
const testedStop = {
  name: "",
  duty: "impact",
  freeHeight: { values: [Number.MAX_VALUE], tol: 0 },
  damping: null,
  testedAtSpeed: false,
} as const;

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
    const hit = hitOf({ ...draw, testedAtSpeed: true }, curve, massKg, speedMPerS, drawnSteps);
    return hit.ok ? [hit.value] : [];
  });
  if (hits.length < fewestDraws) return null;
  const law = beyondTest((1000 * speedMPerS) / Math.max(found.fastestMmPerS, 1e-9));
  const width = (of: (hit: FreeMassHit) => number, share: number) => {
    const away = hits.map((hit) => Math.abs(of(hit) - of(best))).sort((a, b) => a - b);
    const drawn = away[Math.ceil(0.95 * (away.length - 1))] ?? 0;
    return Math.hypot(drawn, share * of(best));
  };
  return {
    peakForceN: width((hit) => hit.peakForceN, law.peak),
    // Force times depth is energy: where one is greater the other is less.
    peakCompressionMm: width((hit) => hit.peakCompressionMm, law.peak),
    leaveSpeedMmPerS: width((hit) => hit.leaveSpeedMmPerS, law.leaving),
    energyInJ: width((hit) => hit.energyInJ, 0),
    // Energy goes with the square of the speed.
    energyOutJ: width((hit) => hit.energyOutJ, 2 * law.leaving),
  };
}

function remarksOf(
  found: FoundStop,
  hit: FreeMassHit,
  usableMm: number,
  speedMPerS: number,
): readonly Remark[] {
  const remarks: Remark[] = [
    {
      code: "hitSimulated",
      sentence: [simulatedStops],
    },
  ];
  if (hit.peakCompressionMm > usableMm) {
    remarks.push({
      code: "hitDeeper",
      sentence: [
        messages.hitGoesDeepPast({
          peakCompressionMm: { kind: "length", value: hit.peakCompressionMm },
          usableMm: { kind: "length", value: usableMm },
        }),
      ],
    });
  }
  if (!found.testedAtSpeed) {
    remarks.push({
      code: "hitUndamped",
      sentence: [messages.hitIsThatOf],
    });
  } else if (1000 * speedMPerS > fasterThanTested * found.fastestMmPerS) {
    remarks.push({
      code: "hitFaster",
      sentence: [
        messages.hitBeginsAtFastest({
          speedMPerS: { kind: "speed", value: 1000 * speedMPerS },
          fastestMmPerS: { kind: "speed", value: found.fastestMmPerS },
        }),
      ],
    });
  }
  return remarks;
}

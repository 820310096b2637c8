import { type RubberBlockEstimate, rubberBlockCurve } from "../../physics/estimates/index.ts";
import type { Outcome } from "../../physics/outcome.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import type { Say } from "../../words/message.ts";
import type { CheckStop } from "../check/checkRecord.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import type { LengthUnit } from "../entry/units.ts";
import { chooseStop } from "./changes.ts";
import { withChoice } from "./choice.ts";
import { helperInputs, helperToleranced } from "./helperInputs.ts";

/**
 * What the check's own stop comes to as a plain block of solid rubber, by the hardness and the diameter that
 * were typed and its free height; null while one of them is missing. Faults: those of `rubberBlockCurve`.
 */
export function blockOf(stored: StoredCheck): Outcome<RubberBlockEstimate> | null {
  const shoreA = helperToleranced(stored, helperInputs.blockHardness);
  const diameter = helperToleranced(stored, helperInputs.blockDiameter);
  const freeHeight = stored.record.stop?.freeHeight;
  if (shoreA === null || diameter === null || freeHeight === undefined) return null;
  const height = { value: mean(freeHeight.values), tol: freeHeight.tol };
  return rubberBlockCurve({ shoreA, diameter, height });
}

/** As many decimals as an estimate's table needs: hundredths of a mm, tenths of a newton. */
const inTable = ([depthMm, forceN]: readonly [number, number]) =>
  [Math.round(100 * depthMm) / 100, Math.round(10 * forceN) / 10] as const;

/** The check's own stop with that estimate's curve and usable compression. What was measured of it stays. */
export function withBlock(
  stored: StoredCheck,
  { curve, usableCompressionMm, how, forceShare }: RubberBlockEstimate,
  unit: LengthUnit,
  say: Say,
): StoredCheck {
  const {
    restLoss: _loss,
    staticShare: _share,
    branches: _branches,
    testDoubt: _doubt,
    ...own
  } = stored.record.stop ?? {};
  const stop: Partial<CheckStop> = {
    ...own,
    duty: own.duty ?? "impact",
    usableCompressionMm: own.usableCompressionMm ?? Math.round(100 * usableCompressionMm) / 100,
    curve: curve.map(inTable),
    damping: null,
    testedAtSpeed: false,
    estimated: { how: say(how), forceShare },
  };
  return withChoice(chooseStop(stored, stop, unit), "stop.source", "hand");
}

import type { Interval } from "../fitment.ts";
import type { Outcome } from "../outcome.ts";
import type { Sentence } from "../sentence.ts";
import type { Residuals } from "./residuals.ts";
import type { StopLoss } from "./stopLoss.ts";

/**
 * Rows of a bench test, column by column, all of one length, every number finite. Depth: mm, positive
 * as the stop is pressed. Speed: mm/s, positive while it is pressed deeper, negative while it comes
 * back. Force: N, positive as the stop pushes back.
 */
export interface DepthSpeedForce {
  readonly kind: "rows";
  readonly depthMm: Float64Array;
  readonly speedMmPerS: Float64Array;
  readonly forceN: Float64Array;
}

/** Samples of a cyclic test in the order of time: s, mm positive as the stop is pressed, N. */
export interface TimeDisplacementForce {
  readonly kind: "cycles";
  readonly timeS: Float64Array;
  readonly displacementMm: Float64Array;
  readonly forceN: Float64Array;
}

export type BenchTest = DepthSpeedForce | TimeDisplacementForce;

/** Rows up to this speed count as static unless another is given, mm/s. Common practice, no source. */
export const staticSpeedMmPerS = 5;

export interface RowsOptions {
  /** Greatest speed of a static row, mm/s; `staticSpeedMmPerS` where absent. */
  readonly staticSpeedMmPerS?: number;
  /** What the file's own numbers were multiplied by to give mm, mm/s and N; 1 where absent. */
  readonly factors?: { readonly depth: number; readonly speed: number; readonly force: number };
}

/** What was recognised in a file and put right, or what to know of it; a screen shows every one. */
export interface Remark {
  /** True: it may well be a slip, so a person must say that it was read before anything is kept. */
  readonly asks?: boolean;
  readonly code:
    | "forceReversed"
    | "depthReversed"
    | "speedReversed"
    | "columnsSwapped"
    | "forceZero"
    | "depthZero"
    | "softStart"
    | "zeroNotTold"
    | "rowsLeftOut"
    | "liftedOff"
    | "reboundNotTested"
    | "compressionNotTested"
    | "speedUnsigned"
    | "notProportional"
    | "madeMonotone"
    | "bothDirections"
    | "cyclesLeftOut"
    | "notASine"
    | "slowCycles"
    | "noticeableDrift"
    | "zerosForMissing"
    | "saturated"
    | "heldDepths"
    | "spikes"
    | "forceDrift"
    | "timeRestarts"
    | "rampByDuration"
    | "firstCycleLeftOut"
    | "firstRampLeftOut"
    | "partsChosen"
    | "lossNotTold"
    | "deeperThanStatic"
    | "stiffnessOdd"
    | "depthOdd"
    | "speedOdd"
    | "speedUnlikely"
    | "curveOdd"
    | "hitSimulated"
    | "hitDeeper"
    | "hitUndamped"
    | "hitFaster"
    | "partMissing"
    | "partsOfFile"
    | "testsNotUsable"
    | "encodingGuessed";
  readonly sentence: Sentence;
}

/** One point of the static curve with its doubt. */
export interface StaticPoint {
  readonly depthMm: number;
  readonly forceN: number;
  /** Standard error of the force there, N: scatter of its rows / √rows. */
  readonly standardErrorN: number;
  readonly rows: number;
}

export interface StaticCurve {
  /** Rising in both columns; (0, 0) is implied. As a stop's `curve` takes it: `[depthMm, forceN]`. */
  readonly points: readonly StaticPoint[];
  readonly residuals: Residuals;
  readonly rows: number;
}

/** One line of the damping table: least squares of force less static force on speed, by direction. */
export interface DampingRow {
  readonly depthMm: number;
  /** N·s/mm while compressing, with its standard error; null where not tested at two speeds. */
  readonly compressing: DampingValue | null;
  readonly rebounding: DampingValue | null;
}

export interface DampingValue {
  readonly coefficient: number;
  readonly standardError: number;
  readonly rows: number;
  /** Distinct speeds, mm/s, as magnitudes, rising. */
  readonly speedsMmPerS: readonly number[];
}

/** Share of the static force lost at rest, with its standard error. */
export interface RestLoss {
  readonly value: number;
  readonly standardError: number;
}

export interface DampingFit {
  /** Null where the rows do without. */
  readonly restLoss: RestLoss | null;
  /** Depth rising, at least two of them. */
  readonly rows: readonly DampingRow[];
  /** As a stop's `damping` takes it: [depth, in, out], values held at 0 or above. */
  readonly table: readonly (readonly [number, number, number])[];
  readonly residuals: Residuals;
  /** Also among those of the whole analysis. */
  readonly remarks: readonly Remark[];
}

/** The rows of one speed for a plot of force over depth: a fair sample of at most 500, by depth. */
export interface SpeedSeries {
  /** mm/s, mean of its rows; negative while rebounding; 0 for the static rows. */
  readonly speedMmPerS: number;
  readonly rows: number;
  readonly depthMm: Float64Array;
  readonly forceN: Float64Array;
}

export interface RowsAnalysis {
  readonly kind: "rows";
  readonly rows: number;
  readonly staticSpeedMmPerS: number;
  readonly speeds: readonly SpeedSeries[];
  readonly depthRangeMm: Interval;
  readonly staticCurve: Outcome<StaticCurve>;
  /**
   * Faults: "staticRowsOnly" (damping shows only at speed), "tooFewSpeeds", "tooFewDepths",
   * "noStaticRows" (nothing to take the force at speed from).
   */
  readonly damping: Outcome<DampingFit>;
  readonly remarks: readonly Remark[];
}

/** One loop, or the mean of all, closed, for a plot: at most 400 samples a cycle. */
export interface Loop {
  readonly displacementMm: Float64Array;
  readonly forceN: Float64Array;
}

/** A figure of a cycle: mean over the cycles, and its standard error; 0 where there is one cycle. */
export interface CycleFigure {
  readonly value: number;
  readonly standardError: number;
}

/** One cycle, or the mean of several, in the figures by which cycles are held against each other. */
export interface CycleSummary {
  readonly lossJ: number;
  /** In phase with the displacement, N/mm. */
  readonly dynamicRateNPerMm: number;
  /** Null where the loop has no rate to refer to. */
  readonly lossFactor: number | null;
  readonly peakForceN: number;
}

export interface CyclesAnalysis {
  readonly kind: "cycles";
  readonly samples: number;
  readonly cycles: number;
  readonly frequencyHz: number;
  /** Half the stroke X, mm, by a sine fitted to the displacement of each cycle; where it is no sine, half
   * of greatest less least. */
  readonly amplitudeMm: number;
  readonly meanDisplacementMm: number;
  readonly meanForceN: number;
  /** Greatest speed of that sine, X·ω, or of the motion where it is none, mm/s. */
  readonly greatestSpeedMmPerS: number;
  readonly energyInJ: CycleFigure;
  readonly energyOutJ: CycleFigure;
  /** Area of the loop: energy in less energy out. */
  readonly lossJ: CycleFigure;
  /** Rate in phase with the displacement, N/mm. */
  readonly dynamicRateNPerMm: CycleFigure;
  /** ΔE/(2π·U), U = ½·k·X²; null where the loop has no rate to refer to. */
  readonly lossFactor: CycleFigure | null;
  /** ΔE/(π·ω·X²), N·s/mm; null where the motion is no sine or nothing is known at speed. */
  readonly equivalentDampingNsPerMm: CycleFigure | null;
  readonly loop: Loop;
  /** The first cycle of a block, left out or not, and the mean of those after it; null where there is none. */
  readonly firstAndLater: { readonly first: CycleSummary; readonly later: CycleSummary } | null;
  readonly remarks: readonly Remark[];
}

/** What a record of time, depth and force says: its ramp, its cycles block by block, and the loss. */
export interface TimedAnalysis {
  readonly kind: "timed";
  readonly samples: number;
  readonly staticSpeedMmPerS: number;
  /** The static rows, then each block of cycles, by its greatest speed. */
  readonly speeds: readonly SpeedSeries[];
  readonly depthRangeMm: Interval;
  /** Of the slow ramp alone. Faults: "noRamp", and those of `staticCurve`. */
  readonly staticCurve: Outcome<StaticCurve>;
  /** Faults: "staticRowsOnly", "noRamp" (nothing to tell loss from). */
  readonly loss: Outcome<StopLoss>;
  /** Loops of each block of like cycles. */
  readonly blocks: readonly CyclesAnalysis[];
  readonly leftOut: { readonly rows: number; readonly cycles: number };
  readonly remarks: readonly Remark[];
}

export type TestAnalysis = RowsAnalysis | TimedAnalysis;

import type { CurvePoint } from "../fitment.ts";
import type { Outcome } from "../outcome.ts";
import type { Estimate, Toleranced } from "./estimate.ts";

/** An old solid rubber block, bonded or held at both faces, pressed along its axis. */
export interface RubberBlock {
  /** Shore A hardness, 20 to 80. */
  readonly shoreA: Toleranced;
  /** mm; of a square or tapered block that of the circle of equal mean area. */
  readonly diameter: Toleranced;
  /** Free height, mm. */
  readonly height: Toleranced;
}

/** A stop's curve by estimate. Show `how` and "estimate" wherever any of it is shown. */
export interface RubberBlockEstimate {
  readonly curve: readonly CurvePoint[];
  /** 15 % of the height as a design limit for solid rubber. */
  readonly usableCompressionMm: number;
  /** Small-compression rate Ec·A/h, N/mm, with ± half-width: 25 % and the readings' own. */
  readonly rateNPerMm: Estimate;
  /** Half-width of every force of the curve as a share, 0.25 or more. */
  readonly forceShare: number;
  readonly shapeFactor: number;
  /** MPa. */
  readonly youngsModulus: number;
  readonly compressionModulus: number;
  readonly how: string;
}

/** Errors: "hardnessOutOfRange" (Shore A 20…80), "blockNotUsable". */
export declare function rubberBlockCurve(block: RubberBlock): Outcome<RubberBlockEstimate>;

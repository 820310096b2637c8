import * as messages from "../../words/compiled/physics/estimates.ts";
import type { CurvePoint } from "../fitment.ts";
import { fail, type Outcome, succeed } from "../outcome.ts";
import { length, type Message } from "../sentence.ts";
import { type Estimate, isPositive, powerTolerance, type Toleranced } from "./estimate.ts";

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
  /** 15 % of the height, mm: the design limit for solid rubber (Lindley). */
  readonly usableCompressionMm: number;
  /** Small-compression rate Ec·A/h, N/mm, with its ± half-width: 25 % and the readings' own. */
  readonly rateNPerMm: Estimate;
  /** Half-width of every force of the curve as a share, 0.25 or more: a stop's `estimated.forceShare`. */
  readonly forceShare: number;
  readonly shapeFactor: number;
  /** MPa. */
  readonly youngsModulus: number;
  readonly compressionModulus: number;
  readonly how: Message;
}

/** What an estimate from hardness is good for at best: the published relations differ by as much. */
export const hardnessEstimateShare = 0.25;

/** Greatest compression of solid rubber for which it is meant, share of its height. Source: Lindley. */
export const designCompression = 0.15;

/**
 * Young's modulus E0, MPa, of rubber of Shore A hardness 20 … 80:
 * E = 0.0981·(56 + 7.62336·S)/(0.137505·(254 − 2.54·S)). Source: Gent, Rubber Chem. Technol. 31 (1958)
 * 896.
 */
export function gentModulus(shoreA: number): number {
  return (0.0981 * (56 + 7.62336 * shoreA)) / (0.137505 * (254 - 2.54 * shoreA));
}

/**
 * Hardness (IRHD, taken as Shore A in this range) and the factor k of the compression modulus. Source:
 * Lindley, Engineering Design with Natural Rubber; 65 and 75 seen quoted, the others from memory.
 */
const compressionFactors: readonly (readonly [hardness: number, factor: number])[] = [
  [30, 0.93],
  [35, 0.89],
  [40, 0.85],
  [45, 0.8],
  [50, 0.73],
  [55, 0.64],
  [60, 0.57],
  [65, 0.54],
  [70, 0.53],
  [75, 0.52],
];

/** k of Ec = E0·(1 + 2k·S²) at a hardness, straight between the table's values, its ends held. */
export function compressionFactor(hardness: number): number {
  let before = compressionFactors[0] as (typeof compressionFactors)[number];
  for (const point of compressionFactors) {
    if (point[0] >= hardness) {
      const width = point[0] - before[0];
      const share = width === 0 ? 0 : Math.max(0, (hardness - before[0]) / width);
      return before[1] + share * (point[1] - before[1]);
    }
    before = point;
  }
  return before[1];
}

/** Loaded area over force-free area of a cylinder pressed along its axis: d/4h. */
export function shapeFactor(diameterMm: number, heightMm: number): number {
  return diameterMm / (4 * heightMm);
}

/** Ec = E0·(1 + 2k·S²), MPa, of a bonded block. Source: Gent & Lindley, Proc. IMechE 173 (1959) 111. */
export function compressionModulus(shoreA: number, shape: number): number {
  return gentModulus(shoreA) * (1 + 2 * compressionFactor(shoreA) * shape ** 2);
}

const curveShares: readonly number[] = [0.2, 0.4, 0.6, 0.8, 1];

/**
 * Static curve of an old rubber block from its hardness and size, for want of a test:
 * F = A·Ec/3·(1/λ² − λ), λ = 1 − x/h, whose rate at first touch is Ec·A/h (the law of Gaussian rubber
 * in compression, Treloar; from memory), up to 15 % of the height. Says nothing of damping. Every force
 * is ± 25 % at best, more where hardness and size are doubtful.
 *
 * Errors: "hardnessOutOfRange" (Shore A 20 … 80), "blockNotUsable".
 */
export function rubberBlockCurve(block: RubberBlock): Outcome<RubberBlockEstimate> {
  const { shoreA, diameter, height } = block;
  if (!isPositive(shoreA) || shoreA.value < 20 || shoreA.value > 80) {
    return fail("hardnessOutOfRange", [messages.estimateHoldsForHardness]);
  }
  if (!isPositive(diameter) || !isPositive(height)) {
    return fail("blockNotUsable", [messages.diameterAndHeightOf]);
  }
  const area = (Math.PI * diameter.value ** 2) / 4;
  const shape = shapeFactor(diameter.value, height.value);
  const modulus = compressionModulus(shoreA.value, shape);
  const rate = (modulus * area) / height.value;
  const usableCompressionMm = designCompression * height.value;
  const how = messages.estimateFromShoreDiameter({
    shoreA: { kind: "count", value: shoreA.value },
    diameter: length(diameter.value),
    height: length(height.value),
  });
  const tol = rateTolerance(block, rate, shape);
  return succeed({
    curve: curveShares.map((share) => {
      const depth = share * usableCompressionMm;
      const stretch = 1 - depth / height.value;
      return [depth, ((area * modulus) / 3) * (1 / stretch ** 2 - stretch)] as const;
    }),
    usableCompressionMm,
    rateNPerMm: { value: rate, tol, how },
    forceShare: tol / rate,
    shapeFactor: shape,
    youngsModulus: gentModulus(shoreA.value),
    compressionModulus: modulus,
    how,
  });
}

/** 25 % of the relation itself, and first-order parts of hardness, diameter and height. */
function rateTolerance({ shoreA, diameter, height }: RubberBlock, rate: number, shape: number) {
  const step = 0.5;
  const slope =
    (compressionModulus(shoreA.value + step, shape) -
      compressionModulus(shoreA.value - step, shape)) /
    (2 * step);
  const hardnessPower = (slope * shoreA.value) / compressionModulus(shoreA.value, shape);
  const bulge = 2 * compressionFactor(shoreA.value) * shape ** 2;
  const shapePower = (2 * bulge) / (1 + bulge);
  return powerTolerance(rate, [
    [{ value: 1, tol: hardnessEstimateShare }, 1],
    [shoreA, hardnessPower],
    [diameter, 2 + shapePower],
    [height, -1 - shapePower],
  ]);
}

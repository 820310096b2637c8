import type { DrawnReading } from "./drawnReading.ts";
import { standardNormal, standardRectangular } from "./standardDraws.ts";

/**
 * One number a draw for a reading: mean + rectangular part + normal part. The number of a draw depends
 * on nothing but the reading and the seed. Source: JCGM 101:2008, 6.4.2, 6.4.7.
 */
export class ReadingDraws {
  readonly mean: number;
  readonly halfWidth: number;
  readonly standardError: number;
  /** Standard draws, −1 … 1. */
  readonly rectangular: Float32Array;
  /** Standard normal draws; none where the reading has no normal part. */
  readonly normal: Float32Array | null;

  /** @param seed any integer */
  constructor(reading: DrawnReading<string>, seed: number, samples: number) {
    this.mean = reading.mean;
    this.halfWidth = reading.halfWidth;
    this.standardError = reading.standardError;
    this.rectangular = standardRectangular(reading.id, seed, samples);
    this.normal = reading.standardError > 0 ? standardNormal(reading.id, seed, samples) : null;
  }

  /** The number of one draw, in the reading's unit. */
  at(draw: number): number {
    const byTool = this.mean + this.halfWidth * this.rectangular[draw];
    return this.normal === null ? byTool : byTool + this.standardError * this.normal[draw];
  }
}

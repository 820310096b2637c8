import type { Residuals } from "./residuals.ts";

/** A value and its ±, 95 %. */
export interface Doubted {
  readonly value: number;
  readonly doubt: number;
}

/** What a test at speed shows of a stop beside its static curve; a part that it does not show is absent. */
export interface StopLoss {
  /** Share of the curve that remains at rest, 0 … 1. */
  readonly staticShare: Doubted;
  /** Share of the static force lost at rest; 0 with its ± where the test does not tell it from nothing. */
  readonly restLoss: Doubted;
  readonly branches: readonly { readonly tauS: number; readonly share: Doubted }[];
  /** What all of them lose together in the fastest cycle, a share of the curve's rate. */
  readonly fading: Doubted;
  /** What all parts lose together there, a share of the stop's mean rate: none may be told, and this still. */
  readonly whole: Doubted;
  /** By depth, mm: N·s/mm; empty where the test does not tell it from nothing. */
  readonly damping: readonly {
    readonly depthMm: number;
    readonly compressing: Doubted;
    readonly rebounding: Doubted;
  }[];
  /** Greatest ± of a dashpot at any depth, N·s/mm, whether one was found or not. */
  readonly dampingDoubt: number;
  /** Greatest speed of the test, mm/s. */
  readonly fastestMmPerS: number;
  /** Other laws that the test allows, alike in shape, for what is made of them. */
  readonly draws: readonly DrawnLoss[];
  /** Root mean square of what is left of the force, N. */
  readonly misfitN: number;
  /** What is left of it, for a plot. */
  readonly residuals: Residuals;
}

/** One law: as a stop's record holds it. */
export interface DrawnLoss {
  readonly staticShare: number;
  readonly restLoss: number;
  readonly branches: readonly { readonly tauS: number; readonly share: number }[];
  readonly damping: readonly (readonly [number, number, number])[] | null;
}

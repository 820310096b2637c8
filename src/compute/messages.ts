import type { Assessment, DesignEvent, Fitment, Side } from "../physics/fitment.ts";
import type { ImpactRun } from "../physics/impact/index.ts";
import type { Fault } from "../physics/outcome.ts";
import type {
  Candidate,
  PrescribeProgress,
  Prescription,
  SearchOptions,
} from "../physics/prescription/index.ts";
import type { RankedStop, RankProgress } from "../physics/ranking/index.ts";
import type { ReadingId } from "../physics/readings/index.ts";
import type { RemeasurePlan, ToolsAtHand } from "../physics/remeasure/index.ts";
import type { CornerDynamics, MapCell } from "../physics/stiffness/index.ts";

/** What a request may change about the stop before its event is run. */
export interface StopChange {
  readonly extraHeightMm?: number;
  /** R5 class to scale the static curve to, N/mm; absent: as it is. */
  readonly stiffnessClass?: number;
}

/** Within one lane a newer request takes the place of an older one; lanes do not disturb each other. */
export type Request =
  | {
      readonly kind: "assess";
      readonly ticket: number;
      readonly lane: string;
      readonly fitment: Fitment;
      readonly samples?: number;
      readonly seed?: number;
      readonly wholeOnly?: boolean;
    }
  | {
      readonly kind: "map";
      readonly ticket: number;
      readonly lane: string;
      readonly fitment: Fitment;
      readonly side: Side;
      readonly heights: readonly number[] | null;
    }
  | {
      readonly kind: "run";
      readonly ticket: number;
      readonly fitment: Fitment;
      readonly side: Side;
      readonly event: DesignEvent;
      readonly change: StopChange;
      readonly traceStepS: number;
    }
  | {
      readonly kind: "rank";
      readonly ticket: number;
      readonly lane: string;
      readonly fitment: Fitment;
      readonly candidates: readonly Candidate[];
      readonly options: SearchOptions;
    }
  | {
      readonly kind: "prescribe";
      readonly ticket: number;
      readonly lane: string;
      readonly fitment: Fitment;
      readonly candidates: readonly Candidate[];
      readonly options: SearchOptions;
    }
  | {
      readonly kind: "remeasure";
      readonly ticket: number;
      readonly lane: string;
      readonly fitment: Fitment;
      readonly assessment: Assessment;
      readonly tools: ToolsAtHand;
      readonly passed: readonly ReadingId[];
    }
  | { readonly kind: "cancel"; readonly ticket: number };

export interface MapLayout {
  readonly secantRateNPerMm: number;
  readonly heights: readonly number[];
  readonly classes: readonly number[];
}

/** `last`: nothing more comes for this ticket. */
export type Reply = { readonly ticket: number; readonly last: boolean } & (
  | { readonly kind: "static"; readonly assessment: Assessment }
  | {
      readonly kind: "complete";
      readonly assessment: Assessment;
      readonly corners: readonly CornerDynamics[];
    }
  | { readonly kind: "mapLayout"; readonly layout: MapLayout }
  | { readonly kind: "cells"; readonly cells: readonly MapCell[] }
  | { readonly kind: "run"; readonly run: ImpactRun }
  | { readonly kind: "ranking"; readonly progress: RankProgress }
  | { readonly kind: "ranked"; readonly ranked: readonly RankedStop[] }
  | { readonly kind: "prescribing"; readonly progress: PrescribeProgress }
  | { readonly kind: "prescribed"; readonly prescription: Prescription }
  | { readonly kind: "remeasurePlan"; readonly plan: RemeasurePlan }
  | { readonly kind: "fault"; readonly fault: Fault }
);

import type { CheckId, ReadingSource, RoadClass, State, Use } from "./choices.ts";
import type {
  GeometryReadingName,
  GeometryReadingOf,
  LayoutFact,
  Linkage,
} from "./layouts/geometryRegistry.ts";
import type { LayoutKind } from "./layouts/layoutKinds.ts";
import type { ArmRole, LayoutSaid } from "./layouts/layoutSaid.ts";
import type { FieldPath } from "./outcome.ts";
import type { LimitKind, LimitPlace } from "./readings/limitReadings.ts";
import type { QuantityId } from "./readings/readingId.ts";
import type { RideQuantity } from "./readings/rideReadings.ts";
import type { OptionalStopNumber } from "./readings/stopReadings.ts";
import type { Sentence } from "./sentence.ts";

export type {
  ArmRole,
  CheckId,
  GeometryReadingName,
  LayoutKind,
  LimitKind,
  Linkage,
  RideQuantity,
  RoadClass,
  State,
  Use,
};

/**
 * Repeats of one measurement (at least one) and the tool's ± half-width. mm, deg or kg by its use.
 * An absent source means measured; `by` is who took it.
 */
export interface Reading {
  readonly values: readonly number[];
  readonly tol: number;
  readonly source?: ReadingSource;
  readonly by?: string;
}

export type Side = "left" | "right";

/**
 * The readings of one layout. `layouts/geometryRegistry.ts` has each of them: what it is made of,
 * what stands in for it, and whether the layout has no motion without it.
 */
type LayoutReadings<Kind extends LayoutKind> = {
  readonly [Name in GeometryReadingOf<Kind>]?: Reading;
};

/** Each layout tells in its own file of `layouts` what it is. */
export type Layout = {
  readonly [Kind in LayoutKind]: Omit<LayoutSaid, "stopOn"> & {
    readonly kind: Kind;
    readonly readings: LayoutReadings<Kind>;
  } & (LayoutFact<Kind, "saysStopOn"> extends true ? Pick<LayoutSaid, "stopOn"> : unknown);
}[LayoutKind];

/**
 * Something that ends the travel. `at` wheel: the clearance closes by `perWheel` mm (1 where absent)
 * per mm of wheel travel; at stop: the reading is the stop closing at which it touches; at arm (arm and
 * damper only): the clearance of a point on the arm's own line, `distance` from the pivot line.
 */
export interface HardLimit {
  readonly kind: LimitKind;
  readonly at: LimitPlace;
  readonly perWheel?: number;
  readonly distance?: Reading;
  readonly reading: Reading;
}

/**
 * One side of the axle. `geometry` replaces the layout's readings where this side was measured apart.
 * Exactly one of `gap`, `pressedHeight` and `seatToPad` says where the stop stands (`budget/gap.ts`).
 */
export interface Corner {
  readonly side: Side;
  /** Along the stop's axis at ride, mm; 0 = just touching. */
  readonly gap?: Reading;
  /** The stop touches and is pressed: its height as it stands at ride, mm. */
  readonly pressedHeight?: Reading;
  /** The stop is missing or ruined: from its seat to its pad at ride, mm. */
  readonly seatToPad?: Reading;
  /** Half the difference between ride heights read after lifting and after pushing down, mm: friction. */
  readonly settleMm?: number;
  readonly rideHeight?: Reading;
  readonly cornerMassKg?: Reading;
  readonly geometry?: { readonly [Name in GeometryReadingName]?: Reading };
  readonly limits: readonly HardLimit[];
}

/** [compression mm, force N], rising in both; (0, 0) is implied. */
export type CurvePoint = readonly [number, number];
/** [compression mm, N·s/mm while compressing, N·s/mm while rebounding]. */
export type DampingPoint = readonly [number, number, number];

/** Part of a stop's force that fades with a relaxation time: how much of the static rate it adds at once. */
export interface StopBranch {
  /** Relaxation time, s, above 0. */
  readonly tauS: number;
  /** Its stiffness as a share of the static curve's rate, 0 or more. */
  readonly share: number;
}

/** What `readings/stopReadings.ts` says of each. */
type StopNumbers = { readonly [Name in OptionalStopNumber]?: number };

export interface Stop extends StopNumbers {
  readonly name: string;
  /** carry: made to stay in contact under load. */
  readonly duty: "impact" | "carry";
  readonly freeHeight: Reading;
  readonly usableCompressionMm: number;
  readonly curve: readonly CurvePoint[];
  readonly damping: readonly DampingPoint[] | null;
  readonly testedAtSpeed: boolean;
  /** From tests at speed only. */
  readonly branches?: readonly StopBranch[];
  /** What that test leaves open. */
  readonly testDoubt?: TestDoubt;
  readonly partNumber?: string;
  readonly revision?: string;
  readonly batch?: string;
  /** Absent: the curve is from a test. */
  readonly estimated?: EstimatedCurve;
}

/** What a test at speed shows beside the static curve: one law of a stop. */
export interface StopLaw {
  readonly damping: readonly DampingPoint[] | null;
  readonly restLoss?: number;
  readonly staticShare?: number;
  readonly branches?: readonly StopBranch[];
}

/** What a stop's test at speed leaves open. */
export interface TestDoubt {
  /** Greatest speed of the test's rows, mm/s. */
  readonly fastestMmPerS: number;
  /** Other laws that the test allows, each as likely as the next. */
  readonly laws: readonly StopLaw[];
}

/** A curve that was not tested: how it was come by, and the ± half-width of its forces as a share. */
export interface EstimatedCurve {
  readonly how: string;
  readonly forceShare: number;
}

/**
 * Masses, rates and damping at the wheel. Any of them may be unknown; what needs it is then named,
 * not guessed. `tolerances` gives the ± half-width of an estimated value, which enters the doubt, and
 * `estimated` says how a value was come by.
 */
export interface Ride {
  readonly unsprungMassKg?: number;
  readonly wheelRateNPerMm?: number;
  readonly tyreRateNPerMm?: number;
  readonly damperBumpNsPerMm?: number;
  readonly damperReboundNsPerMm?: number;
  readonly payloadPerCornerKg?: number;
  readonly tolerances?: { readonly [Name in RideQuantity]?: number };
  readonly estimated?: { readonly [Name in RideQuantity]?: string };
}

/** A rounded bump: heightM high, lengthM long, met at speedKmPerH. */
export interface ObstacleEvent {
  readonly kind: "obstacle";
  readonly heightM: number;
  readonly lengthM: number;
  readonly speedKmPerH: number;
}

/** A drop of heightM onto flat ground. */
interface LandingEvent {
  readonly kind: "landing";
  readonly heightM: number;
}

/** A road hump, a circular segment heightM high and lengthM long, met at speedKmPerH. */
export interface HumpEvent {
  readonly kind: "hump";
  readonly heightM: number;
  readonly lengthM: number;
  readonly speedKmPerH: number;
}

export type DesignEvent = ObstacleEvent | HumpEvent | LandingEvent;

/** What a use demands. All of it common practice, none from a published source, all adjustable. */
export interface UseRules {
  readonly roadClass: RoadClass;
  readonly speedKmPerH: number;
  readonly allowedContactsPerKm: number;
  readonly accelerationCapG: number;
  readonly events: readonly DesignEvent[];
  readonly reserveMm: number;
  readonly balanceMm: number;
  /** Kurtosis of the motion that the road causes: 3 for an even road, 5 for one of rough and smooth pieces. */
  readonly roadKurtosis: RoadKurtosis;
}

export type RoadKurtosis = 3 | 5;

/** One fitment, in the model's units: what the assessment needs of a check record. */
export interface Fitment {
  readonly use: Use;
  readonly layout: Layout;
  readonly corners: readonly Corner[];
  /** The stop that is asked about. */
  readonly stop: Stop;
  /** The stop that the readings were taken with, where another one is asked about. */
  readonly recordedStop?: Stop;
  /** A rigid spacer under the stop that is asked about, beyond what stood there as measured, mm. */
  readonly spacerMm?: number;
  /** Contacts found by moving the suspension by hand; they go before what is computed. */
  readonly fullTravel?: FullTravelCheck;
  readonly ride?: Ride;
  readonly rules?: Partial<UseRules>;
}

/** What touches while the wheel is moved up by hand. */
export type TouchedPart = "stop" | LimitKind | "hose";

/** One side, its wheel moved up by hand. mm. */
export interface FullTravelCorner {
  readonly side: Side;
  /** Height from hub to arch at the measured ride height; only where heights are measured. */
  readonly atRide?: Reading;
  /** Wheel travel from the ride height, or the height from hub to arch, at each contact. */
  readonly contacts: { readonly [Part in TouchedPart]?: Reading };
  /** Where a rigid block put in the stop's place was met; its height is measured beside it. */
  readonly block?: { readonly reading: Reading; readonly blockHeight: Reading };
}

/** A hand-cycled check of the whole travel. */
export interface FullTravelCheck {
  /** Travel counted from the ride height, or the shrinking height from hub to arch. */
  readonly measure: "wheelTravel" | "hubToArch";
  /** Beam axle: both wheels raised together, or one with the other on the ground. */
  readonly movement: "both" | "one";
  readonly corners: readonly FullTravelCorner[];
}

export type Interval = readonly [number, number];

export interface Check {
  readonly id: CheckId;
  readonly state: State;
  readonly probability?: number;
  /** stiffness only: on which side of the classes that work the stop lies. */
  readonly side?: "soft" | "stiff";
  /** The reading to take again, or the field to look at first. */
  readonly reading?: FieldPath;
  readonly sentence: Sentence;
}

/** One reading's part of the doubt about a result: shares of the variance, summing to 1. */
export interface DoubtShare<Id extends string = QuantityId> {
  readonly reading: Id;
  readonly share: number;
}

export interface EventResult {
  readonly kind: DesignEvent["kind"];
  readonly peakWheelTravelMm: number;
  readonly peakCompressionMm: number;
  readonly peakStopForceN: number;
  readonly peakAccelerationG: number;
  readonly energyInJ: number;
  readonly energyOutJ: number;
  readonly leaveSpeedMmPerS: number;
  /** Greatest speed at which the stop closes while it is met, mm/s. */
  readonly closingSpeedMmPerS: number;
  /** Time within the run in which the tyre bears nothing, ms. */
  readonly tyreOffMs: number;
  /** Greatest rise of the body above its rest, mm. */
  readonly bodyRiseMm: number;
  readonly fullStop: boolean;
  readonly hardContact: boolean;
}

/** ± of an event's figures, 95 %, as far as it comes from the stop's test. */
export interface EventTestDoubt {
  readonly peakCompressionMm: number;
  readonly peakStopForceN: number;
  readonly peakAccelerationG: number;
  readonly energyOutJ: number;
  readonly leaveSpeedMmPerS: number;
  readonly bodyRiseMm: number;
  /** How many times the fastest row of the test the stop closes at; null where the test tells no speed. */
  readonly timesTested: number | null;
}

/** What the stop's test leaves open of the events, over the laws that it allows. */
export interface DoubtFromTest {
  /** One an event, laden. */
  readonly events: readonly EventTestDoubt[];
  /** Share of the laws with which the stop itself works in every event, laden and unladen. */
  readonly passShare: number;
}

export interface CornerAssessment {
  readonly side: Side;
  /** Which way the wheel's travel was found. */
  readonly linkage: Linkage;
  /** R at the measured ride height, wheel per stop. */
  readonly leverRatio: number;
  /** R where the stop is fully pressed. */
  readonly leverRatioAtFullStop: number;
  readonly wheelTravelToContactMm: number;
  readonly wheelTravelToFullStopMm: number;
  readonly wheelTravelToHardLimitMm: number | null;
  readonly hardLimit: LimitKind | null;
  readonly freeShare: number | null;
  readonly reserveMm: number | null;
  readonly spacerMm: number | null;
  readonly tallerMm: number | null;
  readonly secantRateNPerMm: number;
  readonly stopRateClass: number;
  readonly progressive: boolean;
  /** Beam axle: one wheel up, the other on the ground. */
  readonly oneWheel?: {
    readonly leverRatio: number;
    readonly wheelTravelToContactMm: number;
    readonly wheelTravelToFullStopMm: number;
  };
  /** Null where the ride data they need are unknown, from here … */
  readonly roadTravelSigmaMm: number | null;
  readonly contactsPerKm: number | null;
  readonly loadedSagMm: number | null;
  readonly loadedTravelToContactMm: number | null;
  readonly loadedContactsPerKm: number | null;
  readonly freeTravelNeededMm: number | null;
  readonly freeTravelNeededUnladenMm: number | null;
  readonly mostExtraHeightMm: number | null;
  readonly events: readonly EventResult[] | null;
  /** The same of a stop tested at speed without what the tests show; null where they show nothing. */
  readonly undampedEvents: readonly EventResult[] | null;
  /** What the stop's test leaves open of them; null where it does not say. */
  readonly fromTest: DoubtFromTest | null;
  /** Whether the stop itself, unscaled, passes every event laden and unladen. */
  readonly stopItselfPasses: boolean | null;
  readonly classesThatWork: readonly number[] | null;
  /** … to here. A null here beside a list of classes means that no class works. */
  readonly classWindow: Interval | null;
  /** 95 %: 2.5 and 97.5 percentiles. */
  readonly intervals: {
    readonly wheelTravelToContactMm: Interval;
    readonly wheelTravelToFullStopMm: Interval;
    readonly wheelTravelToHardLimitMm: Interval | null;
    readonly reserveMm: Interval | null;
    readonly spacerMm: Interval | null;
    readonly tallerMm: Interval | null;
  };
  readonly clearanceProbability: number | null;
  readonly earlyContactProbability: number | null;
  readonly loadedCompressionMm?: number;
  readonly checks: readonly Check[];
  /** First-order shares (JCGM 100:2008, 5.1.2), greatest first. */
  readonly doubt: {
    readonly reserve: readonly DoubtShare[];
    readonly contact: readonly DoubtShare[];
  };
  /** What is not known of the ride data, and so cannot be said: names of Ride or "cornerMassKg". */
  readonly missing: readonly (RideQuantity | "cornerMassKg")[];
}

export interface Assessment {
  readonly verdict: State;
  /** One sentence why. */
  readonly reason: Sentence;
  readonly corners: readonly CornerAssessment[];
}

import type { GeometryReadingName, LayoutKind, Use, UseRules } from "../../physics/fitment.ts";
import type { CheckStop, Platform, TakenFromPack, TypedReading } from "../check/checkRecord.ts";
import type { Mounting } from "./mounting.ts";

export type { Platform, TakenFromPack };

export const packFormat = "stopfit-pack";
export const packVersion = 1;

/** A value and its standard error; null where it was not tested. */
type TestedValue = readonly [value: number, standardError: number] | null;

/** What one bench test of a stop gave, with enough of its rows to draw it again. Model units. */
export interface PackTest {
  readonly id: string;
  /** The file it was imported from. */
  readonly file: string;
  readonly importedAt: string;
  /** "cycles" are tests of older versions: one block and no more. */
  readonly kind: "rows" | "cycles" | "timed";
  /** Rows or samples in the file. */
  readonly rows: number;
  /** What was recognised in the file and put right, in words. */
  readonly remarks: readonly string[];
  readonly notes?: string;
  /** Rows up to this speed counted as static, mm/s. */
  readonly staticSpeedMmPerS?: number;
  /** [mm, N, standard error N] by isotonic regression. */
  readonly curve?: readonly (readonly [number, number, number])[];
  /** Root mean square of the static rows' residuals, N. */
  readonly residualRmsN?: number;
  /** By depth: N·s/mm compressing and rebounding. */
  readonly damping?: readonly {
    readonly depthMm: number;
    readonly compressing: TestedValue;
    readonly rebounding: TestedValue;
  }[];
  /** A fair sample of the rows: [mm, mm/s, N]. */
  readonly sample?: readonly (readonly [number, number, number])[];
  readonly cycles?: PackCycles;
  /** Each block of like cycles of a record in time. */
  readonly blocks?: readonly PackCycles[];
  /** What it loses, each value with its ±, 95 %. */
  readonly loss?: PackLoss;
  /** What the law leaves of the force of the rows at speed: [mm, N], a fair sample. */
  readonly residuals?: readonly (readonly [number, number])[];
  readonly conditions?: TestConditions;
}

/** Under what a test was made, as typed. */
export interface TestConditions {
  readonly temperature?: string;
  readonly preload?: string;
  readonly conditioning?: string;
  readonly rest?: string;
  readonly specimen?: string;
}

/** Loss found by a test at speed; value and ±, 95 %. */
export interface PackLoss {
  readonly staticShare: readonly [number, number];
  readonly restLoss: readonly [number, number];
  /** [s, share, ±]. */
  readonly branches: readonly (readonly [number, number, number])[];
  /** Of a dashpot, found or not, N·s/mm. */
  readonly dampingDoubt: number;
  /** Of the test's rows, mm/s. */
  readonly fastestMmPerS: number;
  /** Root mean square of what is left of the force, N. */
  readonly misfitN?: number;
}

/** A cycle, or the mean of several. */
export interface PackCycle {
  readonly lossJ: number;
  readonly dynamicRateNPerMm: number;
  readonly lossFactor: number | null;
  readonly peakForceN: number;
}

/** Figures of a block of like cycles. */
export interface PackCycles {
  readonly count: number;
  readonly frequencyHz: number;
  readonly amplitudeMm: number;
  readonly energyInJ: number;
  readonly energyOutJ: number;
  readonly lossJ: number;
  readonly dynamicRateNPerMm: number;
  readonly lossFactor: number | null;
  readonly equivalentDampingNsPerMm: number | null;
  /** Middle of the stroke, mm. */
  readonly meanDepthMm?: number;
  readonly greatestSpeedMmPerS?: number;
  readonly first?: PackCycle;
  /** The mean of those after the first. */
  readonly later?: PackCycle;
  /** [mm, N], the mean loop. */
  readonly loop: readonly (readonly [number, number])[];
}

/** A stop of the pack: as a record holds it, with what tells one stop from another at the bench. */
export interface PackStop extends CheckStop {
  readonly id: string;
  readonly material?: string;
  readonly outerDiameterMm?: number;
  /** In words, as on the label. */
  readonly mounting?: string;
  readonly mount?: Mounting;
  /** The spacers that exist for it, mm. */
  readonly spacersMm?: readonly number[];
  readonly notes?: string;
  readonly tests?: readonly PackTest[];
}

/** What the maker keeps: platforms, stops and house rules. */
export interface Pack {
  readonly format: typeof packFormat;
  readonly version: typeof packVersion;
  readonly name: string;
  readonly notes?: string;
  /** Whose pack it is, and where mail reaches them: for the ways without a server. */
  readonly maker?: { readonly name: string; readonly address: string };
  readonly stops: readonly PackStop[];
  readonly platforms: readonly Platform[];
  /** The spacers that can be bought, mm; absent: 5 to 60 mm by 5, or 1/8 to 2 1/2 in by 1/8. */
  readonly spacersMm?: readonly number[];
  readonly rules?: { readonly [Each in Use]?: Partial<UseRules> };
}

/** As much of a pack as readings and demands are held against. */
export type PackPlatforms = Pick<Pack, "platforms" | "rules">;

/** How much a pack may hold. */
export const packBounds = {
  stops: 2000,
  platforms: 2000,
  testsOfStop: 50,
  blocksOfTest: 100,
  remarksOfTest: 50,
  spacers: 100,
  /** Points of a test's curve, sample or loop. */
  testPoints: 2000,
  textCharacters: 32_000_000,
} as const;

/** The stop as a record holds it: a copy, so that a later pack changes no old check. */
export function recordStop(stop: PackStop): CheckStop {
  const { id: _id, material: _material, outerDiameterMm: _diameter, ...rest } = stop;
  const { mounting: _mounting, mount: _mount, spacersMm: _spacers, ...part } = rest;
  const { notes: _notes, tests: _tests, ...own } = part;
  return own;
}

/** The platform of this id, where the pack has one. */
export function platformOf(pack: PackPlatforms, id: string | null): Platform | null {
  return pack.platforms.find((platform) => platform.id === id) ?? null;
}

export function stopOf(pack: Pack, id: string | null): PackStop | null {
  return pack.stops.find((stop) => stop.id === id) ?? null;
}

/** A platform's reading of this layout, where it has that layout and gives the reading. */
export function platformReading(
  platform: Platform,
  kind: LayoutKind,
  name: GeometryReadingName,
): TypedReading | null {
  if (platform.layout.kind !== kind) return null;
  const readings: { readonly [Name in GeometryReadingName]?: TypedReading } =
    platform.layout.readings;
  return readings[name] ?? null;
}

/** The record's copy of a platform of this pack; its notes stay in the pack. */
export function takenPlatform(platform: Platform): Platform {
  const { notes: _notes, ...taken } = platform;
  return taken;
}

/** The record's copy of what is given of a pack; undefined where nothing is. */
export function takenFrom(
  pack: Pack,
  taken: { readonly platform?: Platform | null; readonly rules?: Partial<UseRules> | undefined },
): TakenFromPack | undefined {
  const { platform, rules } = taken;
  if (!platform && !rules) return undefined;
  return {
    pack: pack.name,
    ...(platform && { platform: takenPlatform(platform) }),
    ...(rules && { rules }),
  };
}

import type { GeometryReadingName, LayoutKind, Use, UseRules } from "../../physics/fitment.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { StoredSentence } from "../../words/message.ts";
import type { CheckStop, Platform, TakenFromPack, TypedReading } from "../check/checkRecord.ts";
import type { Mounting } from "./mounting.ts";

export type { Platform, TakenFromPack };

export const packFormat = "stopfit-pack";
/** The version that is written; version 1 is read as this one. */
export const packVersion = 2;

/** A value and its standard error; null where it was not tested. */
type TestedValue = readonly [value: number, standardError: number] | null;

/** What one bench test of a stop gave, with enough of its rows to draw it again. Model units. */
/** "cycles" are tests of older versions: one block and no more. */
export const testKinds = ["rows", "cycles", "timed"] as const;

export interface PackTest {
  readonly id: string;
  /** The file it was imported from. */
  readonly file: string;
  readonly importedAt: string;
  readonly kind: (typeof testKinds)[number];
  /** Rows or samples in the file. */
  readonly rows: number;
  /** What was recognised in the file and put right, in words and model units. */
  readonly remarks: readonly string[];
  /** The same with its quantities apart, to be shown in the person's units; absent in older tests. */
  readonly remarkSentences?: readonly StoredSentence[];
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
  /** Absent: offered. */
  readonly state?: "offered" | "discontinued";
  /** The part number of what has taken its place. */
  readonly replacedBy?: string;
  /** What stops of one build in several heights share. */
  readonly build?: string;
  /**
   * How much the forces of parts of one batch vary either way, a share. For information: the model draws the
   * usable compression of a batch (`usableTolMm`) and takes the forces as tested, so that no figure, no doubt
   * and no verdict counts it; a check does not carry it.
   */
  readonly forceTolShare?: number;
  /** Under what its curve was tested, where no test of it is kept. */
  readonly conditions?: TestConditions;
  /** The spacers that exist for it, mm. */
  readonly spacersMm?: readonly number[];
  readonly notes?: string;
  readonly tests?: readonly PackTest[];
}

/** Who makes the stops of a pack. */
export interface Maker {
  readonly name: string;
  /** On the labels of the parts: tells one maker's part numbers from another's. */
  readonly code?: string;
  /** By post: it stands on letters. */
  readonly address?: string;
  /** E-mail or phone: where checks are sent to. */
  readonly contact?: string;
  /** A file beside the pack, read as the app is built: SVG or PNG. */
  readonly logo?: string;
  /** The color of buttons and links, #rrggbb; what is too pale for words is refused as the app is built. */
  readonly color?: string;
}

/** What two people were found to differ by, in place of the assumed ± of a reading and tool. */
export interface Repeatability {
  /** A reading by its name, without a side. */
  readonly reading: string;
  /** A ToolId. */
  readonly tool: string;
  /** ± half-width, mm, deg or kg. */
  readonly tol: number;
  /** Pairs of measurings that it comes from. */
  readonly pairs: number;
}

/** What the maker keeps: platforms, stops and house rules. */
export interface Pack {
  readonly format: typeof packFormat;
  readonly version: typeof packVersion;
  readonly name: string;
  /** The maker's own name of this state of the pack: "2026-11". */
  readonly edition?: string;
  /** Whose pack it is, and how they are reached: for the ways without a server. */
  readonly maker?: Maker;
  readonly notes?: string;
  readonly stops: readonly PackStop[];
  readonly platforms: readonly Platform[];
  /** The spacers that can be bought, mm; absent: 5 to 60 mm by 5, or 1/8 to 2 1/2 in by 1/8. */
  readonly spacersMm?: readonly number[];
  readonly rules?: { readonly [Each in Use]?: Partial<UseRules> };
  readonly repeatability?: readonly Repeatability[];
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
  trims: 50,
  repeatability: 500,
  /** Points of a test's curve, sample or loop. */
  testPoints: 2000,
  textCharacters: 32_000_000,
} as const;

/** The stop as a record holds it: a copy, so that a later pack changes no old check. */
export function recordStop(stop: PackStop): CheckStop {
  const { id: _id, material: _material, outerDiameterMm: _diameter, ...rest } = stop;
  const { mounting: _mounting, mount: _mount, spacersMm: _spacers, ...part } = rest;
  const { state: _state, replacedBy: _by, build: _build, conditions: _conditions, ...told } = part;
  const { notes: _notes, tests: _tests, forceTolShare: _force, ...own } = told;
  return own;
}

/** The same in a check that takes it from the pack: its height was not measured on the part at hand. */
export function stopFromPack(stop: PackStop): CheckStop {
  const own = recordStop(stop);
  return { ...own, freeHeight: { ...own.freeHeight, source: "pack" } };
}

/** "HALDENLANE": a code for labels made of a maker's name. */
export function makerCode(name: string): string {
  const letters = name
    .normalize("NFKD")
    .toUpperCase()
    .replace(/[^A-Z0-9]+/g, "");
  return letters.length < 2 ? "MAKER" : letters.slice(0, 12);
}

/** The part numbers that, with their revision, belong to more than one stop. */
export function partsTwice(stops: readonly PackStop[]): readonly string[] {
  const seen = new Set<string>();
  return stops.flatMap(({ partNumber, revision = "" }) => {
    if (partNumber === undefined) return [];
    const part = JSON.stringify([partNumber, revision]);
    const again = seen.has(part);
    seen.add(part);
    return again ? [partNumber] : [];
  });
}

/** Can it still be ordered? */
export function isOffered({ state, replacedBy }: PackStop): boolean {
  return state !== "discontinued" && replacedBy === undefined;
}

/** The stop that has taken this one's place, over as many changes as there were; null where none has. */
export function replacementOf(pack: Pack, stop: PackStop): PackStop | null {
  const seen = new Set<string>([stop.id]);
  let latest: PackStop | null = null;
  let number = stop.replacedBy;
  while (number !== undefined) {
    const wanted: string = number;
    const next: PackStop | undefined = pack.stops.find(({ partNumber }) => partNumber === wanted);
    if (next === undefined || seen.has(next.id)) break;
    seen.add(next.id);
    latest = next;
    number = next.replacedBy;
  }
  return latest;
}

/** The heights in which this build is offered, mm, rising; its own among them. */
export function heightsOf(pack: Pack, stop: PackStop): readonly number[] {
  const alike = pack.stops.filter(
    (each) =>
      each.id === stop.id ||
      (stop.build !== undefined && each.build === stop.build && isOffered(each)),
  );
  return [...new Set(alike.map(({ freeHeight }) => meanOf(freeHeight)))].sort((a, b) => a - b);
}

/** As the first version had it. */
type FirstPack = Omit<Pack, "version"> & { readonly version: 1 };

/** A pack of any version that was ever written, as one of today; what it does not have stays absent. */
export function openPack(pack: Pack | FirstPack): Pack {
  return pack.version === 1 ? { ...pack, version: packVersion } : pack;
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
  taken: {
    readonly platform?: Platform | null | undefined;
    readonly rules?: Partial<UseRules> | undefined;
    /** The id of the stop that was chosen. */
    readonly stop?: string | undefined;
  },
): TakenFromPack | undefined {
  const { platform, rules, stop } = taken;
  if (!platform && !rules && stop === undefined) return undefined;
  return {
    pack: pack.name,
    ...(pack.edition !== undefined && { edition: pack.edition }),
    ...(stop !== undefined && { stop }),
    ...(platform && { platform: takenPlatform(platform) }),
    ...(rules && { rules }),
  };
}

import type {
  CurvePoint,
  DampingPoint,
  EstimatedCurve,
  GeometryReadingName,
  HardLimit,
  LayoutKind,
  LayoutReadings,
  LimitKind,
  Reading,
  Ride,
  Side,
  StopBranch,
  Use,
  UseRules,
} from "../../physics/fitment.ts";

import type { TakenFromPack } from "../pack/platform.ts";

export const checkFormat = "stopfit-check";
export const checkVersion = 1;

/** A reading with what the person typed for each repeat, such as "2 5/16 in", and what with. */
export interface TypedReading extends Reading {
  readonly typed?: readonly string[];
  /** What it was measured with, and how well that got at it: a ToolId and a Reach. */
  readonly tool?: string;
  readonly reach?: string;
}

type Typed<Readings> = { readonly [Name in keyof Readings]: TypedReading };

export type CheckLayout =
  | {
      readonly kind: "arm";
      readonly wheelPerOuter?: number;
      readonly readings: Typed<LayoutReadings<"arm">>;
    }
  | {
      readonly kind: "damper";
      readonly wheelPerOuter?: number;
      readonly readings: Typed<LayoutReadings<"damper">>;
    }
  | {
      readonly kind: "strut";
      readonly wheelPerOuter?: number;
      readonly readings: Typed<LayoutReadings<"strut">>;
    }
  | {
      readonly kind: "axle";
      readonly wheelPerOuter?: number;
      readonly readings: Typed<LayoutReadings<"axle">>;
    };

export type GeometryReadings = { readonly [Name in GeometryReadingName]?: TypedReading };

export type Role = "installer" | "customer" | "support";
export type Axle = "front" | "rear";

export interface Author {
  readonly role: Role;
  readonly name?: string;
  readonly contact?: string;
}

export interface Vehicle {
  readonly label: string;
  readonly platformId: string | null;
  readonly liftMm: number;
  readonly use: Use;
}

export interface CheckLimit extends HardLimit {
  readonly at: "wheel" | "stop";
  readonly reading: TypedReading;
}

export interface CheckCorner {
  readonly side: Side;
  readonly gap: TypedReading;
  readonly rideHeight?: TypedReading;
  readonly cornerMassKg?: TypedReading;
  readonly geometry?: GeometryReadings;
  readonly limits: readonly CheckLimit[];
}

export interface CheckStop {
  readonly name: string;
  readonly duty: "impact" | "carry";
  readonly freeHeight: TypedReading;
  readonly usableCompressionMm: number;
  readonly usableTolMm?: number;
  readonly curve: readonly CurvePoint[];
  readonly damping: readonly DampingPoint[] | null;
  readonly testedAtSpeed: boolean;
  readonly restLoss?: number;
  readonly staticShare?: number;
  readonly branches?: readonly StopBranch[];
  readonly partNumber?: string;
  readonly revision?: string;
  readonly batch?: string;
  readonly estimated?: EstimatedCurve;
}

/** A picture, as a file would hold it: its media type and its bytes in base64. */
export interface Photo {
  readonly type: "image/jpeg" | "image/png" | "image/webp";
  readonly data: string;
  readonly caption?: string;
  /** The reading it shows, where it shows one. */
  readonly reading?: string;
}

/** One fitment check, as a phone stores it, a file carries it and `assess` reads it. */
export interface CheckRecord {
  readonly format: typeof checkFormat;
  readonly version: typeof checkVersion;
  readonly id: string;
  readonly createdAt: string;
  readonly author: Author;
  readonly vehicle: Vehicle;
  readonly axle: Axle;
  readonly layout: CheckLayout;
  readonly corners: readonly CheckCorner[];
  readonly stop: CheckStop;
  readonly ride?: Ride;
  readonly rules?: Partial<UseRules>;
  readonly reference?: TakenFromPack;
  readonly photos?: readonly Photo[];
  /** A check of the whole travel by hand: read by `readFullTravel`. */
  readonly fullTravel?: unknown;
  readonly notes?: string;
}

export interface PartialLimit {
  readonly kind: LimitKind;
  readonly at: "wheel" | "stop";
  readonly perWheel?: number;
  readonly reading?: TypedReading;
}

export interface PartialCorner {
  readonly side: Side;
  readonly gap?: TypedReading;
  readonly rideHeight?: TypedReading;
  readonly cornerMassKg?: TypedReading;
  readonly geometry?: GeometryReadings;
  readonly limits: readonly PartialLimit[];
}

/** A record still being filled in: a field is absent until its entry can be read. */
export interface PartialCheckRecord {
  readonly format: typeof checkFormat;
  readonly version: typeof checkVersion;
  readonly id: string;
  readonly createdAt: string;
  readonly author?: Partial<Author>;
  readonly vehicle?: Partial<Vehicle>;
  readonly axle?: Axle;
  readonly layout?: {
    readonly kind?: LayoutKind;
    readonly wheelPerOuter?: number;
    readonly readings?: GeometryReadings;
  };
  readonly corners: readonly PartialCorner[];
  readonly stop?: Partial<CheckStop>;
  readonly ride?: Ride;
  readonly rules?: Partial<UseRules>;
  readonly reference?: TakenFromPack;
  readonly photos?: readonly Photo[];
  /** A check of the whole travel by hand: read by `readFullTravel`. */
  readonly fullTravel?: unknown;
  readonly notes?: string;
}

/** How much of anything a record may hold: far above real use, low enough to harm nothing. */
export const recordBounds = {
  repeats: 100,
  limits: 50,
  curvePoints: 1000,
  events: 50,
  branches: 20,
  labelCharacters: 200,
  typedCharacters: 60,
  notesCharacters: 20_000,
  photos: 24,
  /** Base64 characters of one photo: 3 MB of picture. */
  photoCharacters: 4_000_000,
  /** Characters of a whole record with its photos. */
  textCharacters: 32_000_000,
  nesting: 40,
  /** Numbers, texts, lists and groups in one file, all told: a full record has some thousands. */
  values: 500_000,
  /** The greatest magnitude any number may have. */
  magnitude: 1e9,
} as const;

/** The readings each layout takes, in the order they are measured; the first list must be given. */
export const layoutReadingNames: {
  readonly [Kind in LayoutKind]: {
    readonly needed: readonly GeometryReadingName[];
    readonly optional: readonly GeometryReadingName[];
  };
} = {
  arm: {
    needed: ["pivotToStop", "pivotToOuter"],
    optional: ["armAngle", "stopLineAngle", "stopLean"],
  },
  damper: {
    needed: ["pivotToMount", "pivotToOuter", "damperLength"],
    optional: ["armAngle", "mountLineAngle", "stopLean"],
  },
  strut: { needed: [], optional: ["stopLean"] },
  axle: { needed: ["track", "stopSpacing"], optional: ["stopLean"] },
};

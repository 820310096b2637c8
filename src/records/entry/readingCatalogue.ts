import type { Interval, LimitKind } from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/outcome.ts";
import { geometryNames, geometryRegistry } from "../../physics/readings/geometryRegistry.ts";
import type { EntryUnit, LengthUnit } from "./units.ts";

export type EntryKind = "length" | "angle" | "mass" | "rate" | "damping" | "force" | "number";

/** Everything that can be typed: readings, ride data and the few plain numbers beside them. */
export interface CatalogueEntry {
  /** Plain words in the middle of a sentence, without the side: "gap", "height at ride". */
  readonly name: string;
  readonly kind: EntryKind;
  /** The ± half-width offered at first, in the model's unit (common practice: see `tolerances`). */
  readonly defaultTolerance: number;
  /** What is seen on vehicles, model's unit (common practice). Outside: ask again, never refuse. */
  readonly believable: Interval;
  /** The values that can be at all: a length is above 0, an angle or a lift may be of any sign. */
  readonly allowed: "aboveZero" | "zeroOrMore" | "any";
}

/** Half-widths offered at first (common practice); those of the geometry stand in its registry. */
const tolerances = { nearTape: 1, tape: 2, scale: 10 } as const;

const catalogue: { readonly [name: string]: CatalogueEntry } = {
  ...geometryEntries(),
  gap: reading("gap", "length", tolerances.nearTape, [1, 250]),
  rideHeight: reading("ride height", "length", tolerances.tape, [150, 1200]),
  cornerMassKg: reading("corner weight", "mass", tolerances.scale, [100, 3000]),
  wheelTravel: {
    ...reading("wheel travel", "length", tolerances.tape, [0, 400]),
    allowed: "zeroOrMore",
  },
  heightToArch: reading("height from hub to arch", "length", tolerances.tape, [100, 1200]),
  freeHeight: reading("free height of the stop", "length", tolerances.nearTape, [10, 400]),
  usableCompressionMm: plain("usable compression of the stop", "length", "aboveZero", [4, 300]),
  curve: plain("force curve of the stop", "force", "zeroOrMore", [0, 200_000]),
  damping: plain("damping of the stop", "damping", "zeroOrMore", [0, 50]),
  liftMm: plain("lift", "length", "any", [-100, 300]),
  wheelPerOuter: plain(
    "wheel travel per travel of the outer joint",
    "number",
    "aboveZero",
    [0.8, 1.6],
  ),
  perWheel: plain("closing per wheel travel", "number", "aboveZero", [0.2, 1.5]),
  unsprungMassKg: plain("unsprung mass", "mass", "aboveZero", [15, 400]),
  wheelRateNPerMm: plain("wheel rate", "rate", "aboveZero", [8, 250]),
  tyreRateNPerMm: plain("tyre rate", "rate", "aboveZero", [100, 1500]),
  damperBumpNsPerMm: plain("damping in bump", "damping", "zeroOrMore", [0.2, 15]),
  damperReboundNsPerMm: plain("damping in rebound", "damping", "zeroOrMore", [0.2, 25]),
  payloadPerCornerKg: plain("payload", "mass", "zeroOrMore", [0, 2000]),
  speedKmPerH: plain("road speed", "number", "aboveZero", [5, 150]),
  allowedContactsPerKm: plain(
    "contacts allowed per kilometre",
    "number",
    "aboveZero",
    [0.01, 1000],
  ),
  accelerationCapG: plain("greatest acceleration allowed", "number", "aboveZero", [0.5, 20]),
  reserveMm: plain("reserve wanted", "length", "zeroOrMore", [0, 50]),
  balanceMm: plain("difference allowed left to right", "length", "aboveZero", [1, 50]),
};

const limitNames: { readonly [Kind in LimitKind]: string } = {
  tyre: "clearance over the tyre",
  damper: "damper travel left",
  spring: "spring travel left",
  metal: "metal to metal clearance",
  other: "other clearance",
};

const limitEntry = reading("clearance to the hard limit", "length", tolerances.tape, [5, 400]);
const unknownEntry = plain("value", "number", "any", [-1e9, 1e9]);

function reading(
  name: string,
  kind: EntryKind,
  defaultTolerance: number,
  believable: Interval,
): CatalogueEntry {
  return { name, kind, defaultTolerance, believable, allowed: "aboveZero" };
}

function geometryEntries(): { readonly [name: string]: CatalogueEntry } {
  return Object.fromEntries(
    geometryNames.map((name) => {
      const { sort, usualTolerance, believable, name: words } = geometryRegistry[name];
      const kind = sort === "angle" ? "angle" : "length";
      const entry = reading(words, kind, usualTolerance, believable);
      return [name, sort === "length" ? entry : { ...entry, allowed: "any" }];
    }),
  );
}

function plain(
  name: string,
  kind: EntryKind,
  allowed: CatalogueEntry["allowed"],
  believable: Interval,
): CatalogueEntry {
  return { name, kind, defaultTolerance: 0, believable, allowed };
}

/** What is known of one entry by its id: "pivotToStop", "left.gap", "right.limits.0", "ride.…". */
export function catalogueEntry(id: ReadingId, limitKind?: LimitKind): CatalogueEntry {
  const parts = id.split(".");
  const last = parts.at(-1) ?? "";
  if (/^\d+$/.test(last) && parts.at(-2) === "limits") {
    return limitKind === undefined ? limitEntry : { ...limitEntry, name: limitNames[limitKind] };
  }
  return Object.hasOwn(catalogue, last) ? (catalogue[last] ?? unknownEntry) : unknownEntry;
}

/** "left gap", "right clearance over the tyre", "lean of the stop": the name with its side. */
export function entryName(id: ReadingId, limitKind?: LimitKind): string {
  const side = /^(left|right)\./.exec(id)?.[1];
  const { name } = catalogueEntry(id, limitKind);
  return side === undefined ? name : `${side} ${name}`;
}

/** Inside what is seen on vehicles? `value` in the model's unit. */
export function isBelievable(id: ReadingId, value: number): boolean {
  const [least, greatest] = catalogueEntry(id).believable;
  return value >= least && value <= greatest;
}

const unitsByKind: { readonly [Kind in EntryKind]: { readonly [Unit in LengthUnit]: EntryUnit } } =
  {
    length: { mm: "mm", in: "in" },
    angle: { mm: "deg", in: "deg" },
    mass: { mm: "kg", in: "lb" },
    rate: { mm: "N/mm", in: "lbf/in" },
    damping: { mm: "N·s/mm", in: "lbf·s/in" },
    force: { mm: "N", in: "lbf" },
    number: { mm: "", in: "" },
  };

/** The unit an entry of this kind is typed in by a person who works in `unit`. */
export function entryUnit(kind: EntryKind, unit: LengthUnit): EntryUnit {
  return unitsByKind[kind][unit];
}

import type { Corner, GeometryReadingName, Layout, Linkage, Reading, Side } from "../fitment.ts";
import { geometryRegistry } from "../layouts/geometryRegistry.ts";
import type { Places } from "../layouts/places.ts";
import {
  BoltLength,
  DirectAngle,
  DirectLength,
  GivenLength,
  HeightAngle,
  levelAngle,
  type MeasuredAngle,
  type MeasuredLength,
} from "../motion/measuredQuantity.ts";
import type { Fault } from "../outcome.ts";
import type { QuantityId } from "../readings/readingId.ts";
import { checkedMean, type ReadingSort } from "../uncertainty/checkedMean.ts";
import { type DrawnReading, drawnReading } from "../uncertainty/drawnReading.ts";
import { modelDoubt } from "./modelDoubt.ts";

/** One raw reading, or one doubt of the model itself, that a layout's motion is computed from. */
export interface GeometryReading {
  /** gap: how far a stop on the arm stood off its pad; wheelPerOuter: κ; linkage: the factor m. */
  readonly name: GeometryReadingName | "gap" | "wheelPerOuter" | "linkage";
  readonly id: QuantityId;
  /** As measured; null for what is no reading of the vehicle. */
  readonly reading: Reading | null;
  readonly drawn: DrawnReading;
}

/** What a side's own readings are; a Corner is one. */
export interface MeasuredSide {
  readonly side?: Side;
  readonly geometry?: Corner["geometry"];
  readonly gap?: Reading;
  readonly seatToPad?: Reading;
}

interface Found {
  readonly id: QuantityId;
  readonly reading: Reading;
  readonly isOwn: boolean;
}

/** A quantity and the reading that it stands for, for whoever has to name the one that is wrong. */
export interface NamedQuantity {
  readonly name: GeometryReadingName | "gap";
  readonly quantity: MeasuredLength | MeasuredAngle;
}

/**
 * The readings of one side of a layout as its formulas take them: a side's own before the layout's, a direct
 * one before one made of others. Every raw reading that is asked for gets one place; the first
 * impossible or missing one is kept as the fault.
 */
export class MeasuredPlaces implements Places<GeometryReadingName, Linkage> {
  readonly places: GeometryReading[] = [];
  /** In the order in which they must be set. */
  readonly quantities: NamedQuantity[] = [];
  fault: Fault | null = null;
  readonly #shared: { readonly [Name in GeometryReadingName]?: Reading };
  readonly #own: { readonly [Name in GeometryReadingName]?: Reading };
  readonly #side: MeasuredSide;
  readonly #lengths = new Map<GeometryReadingName, MeasuredLength | null>();
  readonly #angles = new Map<GeometryReadingName, MeasuredAngle | null>();

  constructor(layout: Layout, side: MeasuredSide) {
    this.#shared = layout.readings;
    this.#own = side.geometry ?? {};
    this.#side = side;
  }

  neededLength(name: GeometryReadingName): MeasuredLength {
    return this.#length(name) ?? this.#missing(name);
  }

  optionalLength(name: GeometryReadingName): MeasuredLength | null {
    return this.#length(name);
  }

  offset(name: GeometryReadingName): MeasuredLength {
    return this.#length(name) ?? new GivenLength(0);
  }

  angle(name: GeometryReadingName): MeasuredAngle {
    const { standIn } = geometryRegistry[name];
    return this.#angle(name) ?? (standIn === undefined ? levelAngle : this.angle(standIn));
  }

  optionalAngle(name: GeometryReadingName): MeasuredAngle | null {
    return this.#angle(name);
  }

  has(name: GeometryReadingName): boolean {
    if (this.#find(name) !== null) return true;
    return this.#partsOf(name)?.every((part) => this.#find(part) !== null) === true;
  }

  standOff(): MeasuredLength {
    const { side, gap, seatToPad } = this.#side;
    const name = gap === undefined ? "seatToPad" : "gap";
    const reading = gap ?? seatToPad;
    if (reading === undefined) return new GivenLength(0);
    const id = side === undefined ? name : (`${side}.${name}` as const);
    const quantity = new DirectLength(
      this.#place("gap", { id, reading, isOwn: true }, "gap"),
      true,
    );
    this.quantities.push({ name: "gap", quantity });
    return quantity;
  }

  wheelPerOuter(mean: number, halfWidth: number): number {
    return this.#doubt("wheelPerOuter", mean, halfWidth, 0);
  }

  modelScale(linkage: Linkage): number {
    return this.#doubt("linkage", 1, 0, modelDoubt[linkage]);
  }

  /** A quantity that is no reading of the vehicle, at its own place. */
  #doubt(name: "wheelPerOuter" | "linkage", mean: number, halfWidth: number, sd: number): number {
    const drawn = { id: name, mean, halfWidth, standardError: sd };
    return this.places.push({ name, id: name, reading: null, drawn }) - 1;
  }

  #find(name: GeometryReadingName): Found | null {
    const own = this.#own[name];
    const { side } = this.#side;
    if (own !== undefined) {
      return { id: side === undefined ? name : `${side}.${name}`, reading: own, isOwn: true };
    }
    const reading = this.#shared[name];
    return reading === undefined ? null : { id: name, reading, isOwn: false };
  }

  #partsOf(name: GeometryReadingName): readonly GeometryReadingName[] | null {
    const { madeOf } = geometryRegistry[name];
    if (madeOf === undefined) return null;
    const along = madeOf.by === "heights" ? [madeOf.along] : [];
    return [...madeOf.common, ...madeOf.own, ...along];
  }

  /** Is the reading to be made of others on this side? */
  #isMade(name: GeometryReadingName): boolean {
    const { madeOf } = geometryRegistry[name];
    if (madeOf === undefined) return false;
    const direct = this.#find(name);
    if (direct?.isOwn === true) return false;
    const parts = [...madeOf.common, ...madeOf.own];
    if (!parts.every((part) => this.#find(part) !== null)) return false;
    return direct === null || madeOf.own.every((part) => this.#find(part)?.isOwn === true);
  }

  #length(name: GeometryReadingName): MeasuredLength | null {
    const known = this.#lengths.get(name);
    return known === undefined ? this.#kept(name, this.#lengths, this.#lengthOf(name)) : known;
  }

  #lengthOf(name: GeometryReadingName): MeasuredLength | null {
    const { sort, madeOf } = geometryRegistry[name];
    if (this.#isMade(name) && madeOf?.by === "bolts") {
      const [spacing] = madeOf.common;
      const [front, rear] = madeOf.own;
      return new BoltLength(this.#at(spacing), this.#at(front), this.#at(rear));
    }
    const found = this.#found(name);
    if (found === null) return null;
    const isOffset = sort === "offset";
    return new DirectLength(this.#place(name, found, isOffset ? "offset" : "length"), isOffset);
  }

  #angle(name: GeometryReadingName): MeasuredAngle | null {
    const known = this.#angles.get(name);
    return known === undefined ? this.#kept(name, this.#angles, this.#angleOf(name)) : known;
  }

  #angleOf(name: GeometryReadingName): MeasuredAngle | null {
    const { madeOf } = geometryRegistry[name];
    if (this.#isMade(name) && madeOf?.by === "heights") {
      const along = this.#length(madeOf.along);
      const [inner, outer] = [...madeOf.common, ...madeOf.own];
      if (along !== null && inner !== undefined && outer !== undefined) {
        return new HeightAngle(this.#at(inner), this.#at(outer), along);
      }
    }
    const found = this.#found(name);
    return found === null ? null : new DirectAngle(this.#place(name, found, "angle"));
  }

  #kept<Quantity extends MeasuredLength | MeasuredAngle>(
    name: GeometryReadingName,
    kept: Map<GeometryReadingName, Quantity | null>,
    quantity: Quantity | null,
  ): Quantity | null {
    kept.set(name, quantity);
    if (quantity !== null) this.quantities.push({ name, quantity });
    return quantity;
  }

  /** The direct reading; a fault where only some of what it could be made of is there. */
  #found(name: GeometryReadingName): Found | null {
    const found = this.#find(name);
    const { madeOf, noDefault } = geometryRegistry[name];
    if (found !== null || madeOf === undefined || noDefault === true) return found;
    if (madeOf.own.some((part) => this.#find(part) !== null)) {
      const missing = [...madeOf.common, ...madeOf.own].find((part) => this.#find(part) === null);
      if (missing !== undefined) this.#missing(missing);
    }
    return null;
  }

  #missing(name: GeometryReadingName): MeasuredLength {
    const missing = checkedMean(undefined, name, "length");
    if (!missing.ok) this.fault ??= missing.fault;
    return new GivenLength(1);
  }

  #at(name: GeometryReadingName): number {
    const found = this.#find(name);
    if (found === null) {
      this.#missing(name);
      return 0;
    }
    return this.#place(name, found, "length");
  }

  #place(name: GeometryReading["name"], { id, reading }: Found, sort: ReadingSort): number {
    const known = this.places.findIndex((place) => place.id === id);
    if (known >= 0) return known;
    const mean = checkedMean(reading, id, sort);
    if (!mean.ok) {
      this.fault ??= mean.fault;
      return 0;
    }
    return this.places.push({ name, id, reading, drawn: drawnReading(id, reading) }) - 1;
  }
}

import type { Message } from "../../sentence.ts";

/**
 * What a layout does with a reading. needed: the layout has no motion without it, or without what it may
 * be made of; optional: it is better with it, or has a stand-in; part: only another reading is made of it.
 */
type GeometryUse = "needed" | "optional" | "part";

/**
 * What a reading can be made of. `common` parts serve other readings as well, `own` parts are taken for this
 * one alone. bolts: [spacing], [front, rear]. heights: the inner end's and the outer end's, in this order
 * over both lists, along the length named.
 */
export type MadeOf<Name> =
  | { readonly by: "bolts"; readonly common: readonly [Name]; readonly own: readonly [Name, Name] }
  | {
      readonly by: "heights";
      readonly along: Name;
      readonly common: readonly [] | readonly [Name];
      readonly own: readonly [Name] | readonly [Name, Name];
    };

/** One reading of a suspension's geometry: everything about it that is said only here. */
export interface GeometryDefinition {
  /** A length is above 0 mm; an offset is a length of any sign; an angle is in degrees. */
  readonly sort: "length" | "offset" | "angle";
  /** Plain words in the middle of a sentence, without article or side. */
  readonly name: Message;
  /** What is seen on vehicles, mm or degrees. Outside: ask again, never refuse. Common practice. */
  readonly believable: readonly [number, number];
  /** What it is about, mm or degrees: how a drawing has it until it is known. Common practice. */
  readonly typical: number;
  /** The ± half-width offered at first, mm or degrees. */
  readonly usualTolerance: number;
  /** The part of a suspension that it is read on: a layout takes the readings of the parts that it has. */
  readonly of: string;
  readonly use: GeometryUse;
  /** The readings that it can be made of where it was not taken directly. */
  readonly madeOf?: MadeOf<string>;
  /** The reading that it equals where it was not measured; an angle without one is then 0. */
  readonly standIn?: string;
  /** It has neither a stand-in nor a zero: absent means that it was not measured. */
  readonly noDefault?: true;
  /** It belongs to the whole axle, never to one side. */
  readonly wholeAxle?: true;
}

export type GeometryDefinitions = Readonly<Record<string, GeometryDefinition>>;

/**
 * Half-widths offered at first: what a tape, a level or a phone held against a vehicle gives by common
 * practice, well outside a class II tape's own ±(0.3 + 0.2 L) mm (OIML R 35-1).
 */
export const usual = {
  tape: 2,
  height: 3,
  longTape: 5,
  sighted: 5,
  angle: 0.5,
  lean: 1,
} as const;

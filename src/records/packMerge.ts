import type { Outcome } from "../physics/outcome.ts";
import type { Pack } from "./pack.ts";

/** One field that differs: its plain name and both values as text in model units; null = not given. */
export interface FieldDifference {
  readonly path: string;
  readonly name: string;
  readonly mine: string | null;
  readonly theirs: string | null;
}

/** One stop, platform or set of rules that the two packs do not share exactly. */
export interface PackDifference {
  /** Stable key for `choices`: "stop tall-firm", "platform …", "rules towing", "name". */
  readonly key: string;
  readonly list: "stop" | "platform" | "rules" | "pack";
  readonly id: string;
  readonly label: string;
  readonly kind: "onlyMine" | "onlyTheirs" | "differs";
  /** Empty unless it differs. */
  readonly fields: readonly FieldDifference[];
}

/** both: theirs is added beside mine under a new id (stops and platforms only); neither: left out. */
export type MergeChoice = "mine" | "theirs" | "both" | "neither";

/** What differs between two packs, stops first, in the order of mine, then of theirs. */
export declare function packDifferences(mine: Pack, theirs: Pack): readonly PackDifference[];

/** What is taken where nothing is chosen: what either has alone, and mine where they differ. */
export declare function usualChoice(difference: PackDifference): MergeChoice;

/**
 * One pack of two, by choice per difference key. Error "stopMissing": a platform that is kept names a
 * usual stop that is left out.
 */
export declare function mergePacks(
  mine: Pack,
  theirs: Pack,
  choices?: { readonly [key: string]: MergeChoice },
): Outcome<Pack>;

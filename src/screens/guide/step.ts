import type { ReadingId } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/screens/guide.ts";
/** Sections whose readings are taken at one side of the vehicle. */
export const leftSide = messages.leftSide;
export const rightSide = messages.rightSide;

export const sections = [
  messages.vehicle,
  messages.safety,
  messages.layout,
  leftSide,
  rightSide,
  messages.stopWord,
  messages.loadAndRates,
  messages.requirements,
  messages.finish,
] as const;

export type Section = (typeof sections)[number];

export interface Step {
  /** In the address; a reading's step has the reading's id. */
  readonly id: string;
  readonly section: Section;
  readonly name: string;
  /** Without it there is no answer. */
  readonly needed: boolean;
  readonly state: "done" | "skipped" | "todo";
  /** Something is typed that can't be read, or that can't be so. */
  readonly unreadable: boolean;
  /** The reading that it takes; null for a step of another sort. */
  readonly reading: ReadingId | null;
}

/** A step before it is known whether it was skipped, or what is typed on it can be read. */
export interface Draft {
  readonly id: string;
  readonly section: Section;
  readonly name: string;
  readonly needed?: boolean;
  readonly done: boolean;
  readonly reading?: ReadingId;
  /** Entries beside the one of the step's own id that are typed on its screen. */
  readonly typedHere?: readonly string[];
}

/** What the step of a reading begins with: its id is the reading's. */
export function ofReading(id: ReadingId): Pick<Draft, "id"> & { readonly reading: ReadingId } {
  return { id, reading: id };
}

import type { State } from "../../../physics/fitment.ts";
import type { CellFailure, MapCell } from "../../../physics/stiffness/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/map.ts";

/** A cell, by its place in the map. */
export interface Place {
  readonly column: number;
  readonly row: number;
}

export function heightText(mm: number, unit: LengthUnit): string {
  const text = quantityText({ kind: "length", value: mm }, unit);
  return mm > 0 ? `+${text}` : text;
}

export function classText(stiffnessClass: number, unit: LengthUnit): string {
  return quantityText({ kind: "stiffnessClass", value: stiffnessClass }, unit);
}

/** What a cell shows where several things fail: the first of these. */
export const failureOrder: readonly CellFailure[] = [
  "hardContact",
  "fullStop",
  "acceleration",
  "clearance",
  "earlyContact",
  "notComputed",
];

export const failureWords: Record<CellFailure, string> = {
  hardContact: messages.somethingHardTouchesIn,
  fullStop: messages.pastFullCompressionIn,
  acceleration: messages.tooMuchAcceleration,
  clearance: messages.tooLittleReserve,
  earlyContact: messages.contactTooEarlyWhen,
  notComputed: messages.couldNotBeWorked,
};

/** The same within a region of the map, where there is little room. */
export const regionWords: Record<CellFailure | "works", string> = {
  works: messages.fits2,
  hardContact: messages.hitsHard,
  fullStop: messages.pastFull,
  acceleration: messages.tooHarsh,
  clearance: messages.lowReserve,
  earlyContact: messages.tooEarly,
  notComputed: "?",
};

export function foremost(failures: readonly CellFailure[]): CellFailure | undefined {
  return failureOrder.find((failure) => failures.includes(failure));
}

/** Events that fail and a limit that is passed are a no; too little room or too frequent contact, care. */
export function cellState({ failures, reserveMm }: MapCell): State {
  if (failures.length === 0) return "ok";
  const hard = failures.some(
    (failure) =>
      failure !== "earlyContact" &&
      (failure !== "clearance" || reserveMm === null || reserveMm < 0),
  );
  return hard ? "no" : "care";
}

import type { CellFailure } from "../../../physics/stiffness/heightClassMap.ts";

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
  hardContact: "something harder touches in an event",
  fullStop: "past full stop in an event",
  acceleration: "too much acceleration",
  clearance: "too little reserve",
  earlyContact: "contact too early",
  notComputed: "could not be worked out",
};

export function foremost(failures: readonly CellFailure[]): CellFailure | undefined {
  return failureOrder.find((failure) => failures.includes(failure));
}

import { preferences } from "../preferences.ts";

/** After so many checks nobody reads again how a tape is held. */
const checksOfPractice = 3;

const key = "stopfit.measured";

function measuredHere(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(kept) ? kept.filter((id) => typeof id === "string") : [];
  } catch {
    return [];
  }
}

/** A check was filled in on this device up to its answer. */
export function noteMeasured(id: string): void {
  const known = measuredHere();
  if (known.includes(id) || known.length >= checksOfPractice) return;
  try {
    localStorage.setItem(key, JSON.stringify([...known, id]));
  } catch {
    // Refused: everything stays unfolded.
  }
}

/** Whether what is known after a few checks can be folded: enough were made here, and nobody wants it told. */
export function isPractised(): boolean {
  return measuredHere().length >= checksOfPractice && !preferences().explain;
}

import * as messages from "../../words/compiled/physics/budget.ts";
import * as termNames from "../../words/compiled/physics/terms.ts";
/*
 * What is left of a wheel's travel past full compression, and what height of the stop would use it up. Lengths mm,
 * z wheel travel and s closing from the ride height. `share` (T + S)/(2·T) of a beam axle with one wheel up.
 */

export const reserveFormulas = {
  both: messages.reserveZHZ,
  oneWheel: messages.oneWheelUpZ({ zAtTheWheel: termNames.zAtTheWheel }),
  lesser: { text: messages.reserveLesser, by: messages.bothOrOne },
} as const;

export function reserveOf(hardLimit: number, fullStop: number): number {
  return hardLimit - fullStop;
}

export function oneWheelReserve(atWheel: number, fullStop: number, share: number): number {
  return atWheel - fullStop / share;
}

export const targetFormulas = {
  both: "z_h − r",
  oneWheel: messages.oneWheelUpR({ zAtTheWheel: termNames.zAtTheWheel }),
  lesser: { text: messages.sLesser, by: messages.bothOrOne },
} as const;

/** Wheel travel at which the stop is to be fully compressed. */
export function targetTravel(hardLimit: number, wanted: number): number {
  return hardLimit - wanted;
}

/** The same of both wheels together, for one wheel up. */
export function oneWheelTarget(atWheel: number, wanted: number, share: number): number {
  return (atWheel - wanted) * share;
}

/** Closing per wheel travel of a beam axle with one wheel up, against both: it turns about the other tire. */
export function oneWheelShareOf(track: number, stopSpacing: number): number {
  return (track + stopSpacing) / (2 * track);
}

export const heightFormulas = {
  spacer: "Δ = g + δu − s",
  share: "f = δu / H",
  taller: "Δ = (g + δu − s) / (1 − f)",
} as const;

/** Height of a rigid spacer that takes all of the travel; below 0: height to spare. */
export function spacerHeightOf(pressed: number, closing: number): number {
  return pressed - closing;
}

/** f, the share of its height by which a stop can be compressed. */
export function usableShare(usable: number, freeHeight: number): number {
  return usable / freeHeight;
}

/** The same by a taller stop of the same build, whose usable compression grows with it; f below 1. */
export function tallerHeightOf(spacer: number, share: number): number {
  return spacer / (1 - share);
}

import type { Use, UseRules } from "../fitment.ts";

const daily: UseRules = {
  roadClass: "C",
  speedKmPerH: 60,
  allowedContactsPerKm: 2,
  accelerationCapG: 2.5,
  events: [
    { kind: "obstacle", heightM: 0.1, lengthM: 2, speedKmPerH: 40 },
    { kind: "landing", heightM: 0.1 },
  ],
  reserveMm: 5,
  balanceMm: 10,
  roadKurtosis: 5,
};

/**
 * What each use demands of a stop: road, speed, contacts allowed per km, acceleration cap and design
 * events. Source: common practice; none of it is published, all of it is adjustable.
 */
export const defaultRules: Readonly<Record<Use, UseRules>> = {
  daily,
  towing: { ...daily, speedKmPerH: 80 },
  offroad: {
    ...daily,
    roadClass: "D",
    speedKmPerH: 40,
    allowedContactsPerKm: 50,
    accelerationCapG: 4,
    events: [
      { kind: "obstacle", heightM: 0.15, lengthM: 2.5, speedKmPerH: 40 },
      { kind: "landing", heightM: 0.25 },
    ],
  },
};

/** The rules of a use, with this check's own changes in place of the defaults. */
export function rulesOf(use: Use, overrides?: Partial<UseRules>): UseRules {
  return { ...defaultRules[use], ...overrides };
}

// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const thereIsNoValue = (d: { name: string | number }): string => "There is no value for " + d.name + ". Measure it.";
export const isNotUsableNumber = (d: { name: string | number }): string => "" + d.name + " is not a usable number. Type it again.";
export const ofMustBeZero = (d: { name: string | number }): string => "The ± of " + d.name + " must be zero or more. Type the tool's half-width again.";
export const mustBeAboveZero = (d: { name: string | number }): string => "" + d.name + " must be above zero. Re-measure it.";
export const mustBeAboveZeroWeigh = (d: { name: string | number }): string => "" + d.name + " must be above zero. Weigh it again.";
export const cannotBeBelowZero = (d: { name: string | number }): string => "" + d.name + " cannot be below zero. Type 0 if the stop already touches its pad.";
export const mustLieBetween90 = (d: { name: string | number }): string => "" + d.name + " must lie between −90° and 90°.";
export const halfOfRange: string = "half of the range";
export const upperLower2: string = "(upper − lower) / 2";
export const pReserveWantedReserve: string = "P(reserve ≥ wanted reserve)";
export const pZCZ: string = "P(z_c ≥ z_need), loaded";
export const lowerEnd25: string = "lower end = 2.5th percentile";
export const upperEnd975: string = "upper end = 97.5th percentile";
export const tool = (d: { name: string | number }): string => "" + d.name + " tool";

// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
import { select } from "@messageformat/runtime";
export const checkNeedsOneOr: string = "A check needs one or two corners, of different sides. Measure the left, the right or both.";
export const isNotUsableNumber = (d: { readingName: string | number }): string => "" + d.readingName + " is not a usable number. Type it again.";
export const ofIsNotUsable = (d: { readingName: string | number }): string => "The ± of " + d.readingName + " is not a usable number. Type it again.";
export const speedOnRoad: string = "The speed on the road";
export const numberOfContactsAllowed: string = "The number of contacts allowed per km";
export const accelerationCap: string = "The acceleration cap";
export const reserveWanted: string = "The reserve wanted";
export const differenceAllowedLeftTo: string = "The difference allowed left to right";
export const isNotUsableNumberSet = (d: { name: string | number }): string => "" + d.name + " is not a usable number. Set it again, or go back to the default.";
export const roadClassMustBe: string = "The road class must be one of A to E.";
export const linkage: string = "linkage";
export const testOfStop: string = "test of the stop";
export const the = (d: { side: string | undefined; name: string | number }): string => "the " + select(d.side, { left: "left ", right: "right ", other: "" }) + d.name;
export const the2 = (d: { side: string | undefined; name: string | number }): string => "the " + select(d.side, { left: "left", other: "right" }) + " " + d.name;
export const atRide = (d: { words: string | number }): string => "" + d.words + " at ride";
export const atSContact = (d: { words: string | number; part: string | number }): string => "" + d.words + " at the " + d.part + "'s contact";
export const short = (d: { value: string | number; isValue: boolean }): string => "" + d.value + select(d.isValue, { true: " short", other: " to spare" });
export const n95To = (d: { end: string | number; end2: string | number }): string => " (95 %: " + d.end + " to " + d.end2 + ")";
export const perKm = (d: { number: string | number }): string => "" + d.number + " per km";

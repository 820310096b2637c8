// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const notKnownHere: string = "This version can't say what stands here.";
export const under0001: string = "under 0.001";
export const lessThan116: string = "less than 1/16 in";
export const per = (d: { number: string | number; road: string | number }): string => "" + d.number + " per " + d.road;
export const lessThanOnceIn = (d: { roads: string | number }): string => "less than once in a million " + d.roads;
export const onceIn = (d: { seldom: string | number; seldom2: string | number }): string => "once in " + d.seldom + " " + d.seldom2;
export const unknown: string = "unknown";
export const perKm = (d: { number: string | number }): string => "" + d.number + " per km";

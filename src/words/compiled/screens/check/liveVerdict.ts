// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const besideStep: string = "beside a step";
export const withTheseReadings = (d: { shown: string | number }): string => "With these readings: " + d.shown;
export const workingOutVerdict: string = "Working out the verdict …";
export const noVerdictUntilEvery: string = "No verdict until every reading is in";

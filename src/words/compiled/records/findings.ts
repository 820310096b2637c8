// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const becameMedianOfMeasurements = (d: { day: string | number; reading: string | number; rounded: string | number; value: string | number; n: string | number }): string => "" + d.day + ": " + d.reading + " " + d.rounded + " became " + d.value + ", the median of " + d.n + " measurements.";
export const noVehicleOfLibrary: string = "No vehicle of the library";

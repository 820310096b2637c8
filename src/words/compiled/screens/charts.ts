// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const assumed: string = "Assumed:";
export const showNumbers: string = "Show the numbers";
export const series: string = "Series";

// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const allChecks: string = "All checks";
export const passages: string = "Passages";
export const howItIsComputed: string = "How it is computed";

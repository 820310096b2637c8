// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const atWhichZIs: string = "α at which z is z_asked, found by search; the lines below show it";
export const xPQD: string = "x = (p² − q² + d²)/(2·d), along the pivot line";
export const asinLength = (d: { heightOfItsInnerEnd: string | number; heightOfItsOuterEnd: string | number }): string => "θ = asin[(" + d.heightOfItsInnerEnd + " − " + d.heightOfItsOuterEnd + ")/length]";
export const tanLTanU: string = "τ = (tan θl − tan θu)/(h − k·tan θu), per mm";

// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const measureOtherArmAs: string = "measure the other arm as well";
export const geometryOfArmAbout: string = "Geometry of an arm about a fixed axis; R = dz/ds.";
export const planarFourBarLinkage: string = "Planar four-bar linkage of both arms and the wheel carrier; R = dz/ds.";
export const wheelCarrierTurnsAbout: string = "The wheel carrier turns about the point where both arms' lines meet; R = dz/ds.";

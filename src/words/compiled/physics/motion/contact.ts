// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const dsDCosW: string = "ds/dα = a·cos w, per radian";
export const dsDQSin: string = "ds/dα = a·q·sin γ0/L1, per radian";

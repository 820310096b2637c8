// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const qAcrossOtherArms: string = "Q across, the other arm's pivot from the lower pivot";
export const qUp: string = "Q up";
export const lUpHowFar: string = "L up: how far the measured arm's joint has risen";
export const lUpHowFarLower: string = "L up: how far the lower joint has risen";
export const wheelCarriersTurnLean: string = "δ, the wheel carrier's turn: lean of the line to the top + asin(p/D) − βs";
export const qAcrossOtherArmsPivot: string = "Q across, the other arm's pivot from the upper pivot";
export const uUpHowFar: string = "U up: how far the measured arm's joint has risen";

// @ts-nocheck
/* Written by `npm run words` from the catalogue; change it there. */
export const qAcrossOtherArms: string = "Q across, the other arm's pivot from the lower pivot";
export const qUp: string = "Q up";
export const lUpHowFar: string = "L up: how far the measured arm's joint has risen";
export const lUpHowFarLower: string = "L up: how far the lower joint has risen";
export const wheelCarriersTurnLean = (d: { leanOfTheLineToTheTop: string | number }): string => "δ, the wheel carrier's turn: " + d.leanOfTheLineToTheTop + " + asin(p/D) − βs";
export const qAcrossOtherArmsPivot: string = "Q across, the other arm's pivot from the upper pivot";
export const uUpHowFar: string = "U up: how far the measured arm's joint has risen";
export const wheelCarriersTurnAcos = (d: { directionOfQ: string | number; itsDirectionAtRide: string | number }): string => "δ, the wheel carrier's turn: " + d.directionOfQ + " + acos[(D² + ℓ² − c²)/(2·D·ℓ)] − " + d.itsDirectionAtRide;
export const wheelCarriersTurnAcosD = (d: { directionOfQ: string | number; itsDirectionAtRide: string | number }): string => "δ, the wheel carrier's turn: " + d.directionOfQ + " − acos[(D² + ℓ² − c²)/(2·D·ℓ)] − " + d.itsDirectionAtRide;
export const dzDBCos: string = "dz/dα = b·cos θ0·(1 + e·τ), per radian";
export const pL0Sin: string = "p = L0·sin(βs − β), the strut's axis beside the joint";
export const dDPX: string = "dδ/dα = (p·X/√(L0² − p²) − W)/L0², X and W the arm across and along the line to the top";
export const dzDCos0: string = "dz/dα = a·cos φ0 + e·dδ/dα, per radian";
export const dzDBCos0: string = "dz/dα = κ·b·cos θ0, per radian";
export const dzDBCos01: string = "dz/dα = b·cos θ0·(1 + e·τ)/(1 − k·τ), per radian";

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../../message.ts";
export const measureOtherArmAs: Message = { code: "physics/layouts/onArm.measureOtherArmAs" };
export const geometryOfArmAbout: Message = { code: "physics/layouts/onArm.geometryOfArmAbout" };
export const planarFourBarLinkage: Message = { code: "physics/layouts/onArm.planarFourBarLinkage" };
export const wheelCarrierTurnsAbout: Message = { code: "physics/layouts/onArm.wheelCarrierTurnsAbout" };

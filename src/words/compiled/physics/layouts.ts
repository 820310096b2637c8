/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../message.ts";
export const spacingOfStops: Message = { code: "physics/layouts.spacingOfStops" };
export const axleRisesLevelBoth: Message = { code: "physics/layouts.axleRisesLevelBoth" };
export const lengthOfLowerArm: Message = { code: "physics/layouts.lengthOfLowerArm" };
export const angleOfLowerArm: Message = { code: "physics/layouts.angleOfLowerArm" };
export const distanceFromLowerJoint: Message = { code: "physics/layouts.distanceFromLowerJoint" };
export const leanOfLineFrom: Message = { code: "physics/layouts.leanOfLineFrom" };
export const stopClosesAlongIts: Message = { code: "physics/layouts.stopClosesAlongIts" };
export const measureArmUnderStrut: Message = { code: "physics/layouts.measureArmUnderStrut" };
export const triangleOfArmsPivot: Message = { code: "physics/layouts.triangleOfArmsPivot" };
export const track: Message = { code: "physics/layouts.track" };

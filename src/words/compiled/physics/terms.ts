/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../message.ts";
export const heightOfItsInnerEnd: Message = { code: "physics/terms.heightOfItsInnerEnd" };
export const heightOfItsOuterEnd: Message = { code: "physics/terms.heightOfItsOuterEnd" };
export const leanOfTheLineToTheTop: Message = { code: "physics/terms.leanOfTheLineToTheTop" };
export const zOfTheLastContact: Message = { code: "physics/terms.zOfTheLastContact" };
export const itsDirectionAtRide: Message = { code: "physics/terms.itsDirectionAtRide" };
export const restWithoutPayload: Message = { code: "physics/terms.restWithoutPayload" };
export const heightAtContact: Message = { code: "physics/terms.heightAtContact" };
export const heightAtRide: Message = { code: "physics/terms.heightAtRide" };
export const directionOfQ: Message = { code: "physics/terms.directionOfQ" };
export const zAtTheWheel: Message = { code: "physics/terms.zAtTheWheel" };
export const springAlone: Message = { code: "physics/terms.springAlone" };
export const payload: Message = { code: "physics/terms.payload" };
export const sag: Message = { code: "physics/terms.sag" };

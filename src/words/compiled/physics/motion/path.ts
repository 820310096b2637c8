/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../../message.ts";
export const qAcrossOtherArms: Message = { code: "physics/motion/path.qAcrossOtherArms" };
export const qUp: Message = { code: "physics/motion/path.qUp" };
export const lUpHowFar: Message = { code: "physics/motion/path.lUpHowFar" };
export const lUpHowFarLower: Message = { code: "physics/motion/path.lUpHowFarLower" };
export const wheelCarriersTurnLean = (values: { leanOfTheLineToTheTop: MessageValue }): Message => ({ code: "physics/motion/path.wheelCarriersTurnLean", values });
export const qAcrossOtherArmsPivot: Message = { code: "physics/motion/path.qAcrossOtherArmsPivot" };
export const uUpHowFar: Message = { code: "physics/motion/path.uUpHowFar" };
export const wheelCarriersTurnAcos = (values: { directionOfQ: MessageValue; itsDirectionAtRide: MessageValue }): Message => ({ code: "physics/motion/path.wheelCarriersTurnAcos", values });
export const wheelCarriersTurnAcosD = (values: { directionOfQ: MessageValue; itsDirectionAtRide: MessageValue }): Message => ({ code: "physics/motion/path.wheelCarriersTurnAcosD", values });
export const dzDBCos: Message = { code: "physics/motion/path.dzDBCos" };
export const pL0Sin: Message = { code: "physics/motion/path.pL0Sin" };
export const dDPX: Message = { code: "physics/motion/path.dDPX" };
export const dzDCos0: Message = { code: "physics/motion/path.dzDCos0" };
export const dzDBCos0: Message = { code: "physics/motion/path.dzDBCos0" };
export const dzDBCos01: Message = { code: "physics/motion/path.dzDBCos01" };

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../message.ts";
export const reviewDesksAddressCant = (values: { why: MessageValue }): Message => ({ code: "engine.reviewDesksAddressCant", values });
export const itIsNoAddress: Message = { code: "engine.itIsNoAddress" };
export const itMustBeginWith: Message = { code: "engine.itMustBeginWith" };
export const partAfterIsNot: Message = { code: "engine.partAfterIsNot" };
export const reviewDeskCantBe: Message = { code: "engine.reviewDeskCantBe" };
export const reviewDeskDoesNot: Message = { code: "engine.reviewDeskDoesNot" };
export const reviewDeskHasNo: Message = { code: "engine.reviewDeskHasNo" };
export const reviewDeskDoesNotAllow: Message = { code: "engine.reviewDeskDoesNotAllow" };
export const thisIsLargerThan: Message = { code: "engine.thisIsLargerThan" };
export const reviewDesksMachinesAre: Message = { code: "engine.reviewDesksMachinesAre" };
export const thisVersionOfStopfit: Message = { code: "engine.thisVersionOfStopfit" };
export const thisFileIsNo: Message = { code: "engine.thisFileIsNo" };
export const reviewDesksReply: Message = { code: "engine.reviewDesksReply" };

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const thereIsNoValue = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.thereIsNoValue", values });
export const isNotUsableNumber = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.isNotUsableNumber", values });
export const ofMustBeZero = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.ofMustBeZero", values });
export const mustBeAboveZero = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.mustBeAboveZero", values });
export const mustBeAboveZeroWeigh = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.mustBeAboveZeroWeigh", values });
export const cannotBeBelowZero = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.cannotBeBelowZero", values });
export const mustLieBetween90 = (values: { name: MessageValue }): Message => ({ code: "physics/uncertainty.mustLieBetween90", values });
export const halfOfRange: Message = { code: "physics/uncertainty.halfOfRange" };
export const upperLower2: Message = { code: "physics/uncertainty.upperLower2" };
export const pReserveWantedReserve: Message = { code: "physics/uncertainty.pReserveWantedReserve" };
export const pZCZ: Message = { code: "physics/uncertainty.pZCZ" };
export const lowerEnd25: Message = { code: "physics/uncertainty.lowerEnd25" };
export const upperEnd975: Message = { code: "physics/uncertainty.upperEnd975" };

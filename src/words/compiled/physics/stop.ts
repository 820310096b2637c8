/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const predictedHitsWereChecked: Message = { code: "physics/stop.predictedHitsWereChecked" };
export const rowOfStopsDamping: Message = { code: "physics/stop.rowOfStopsDamping" };
export const stopsDampingCannotBe: Message = { code: "physics/stop.stopsDampingCannotBe" };
export const compressionInStopsDamping: Message = { code: "physics/stop.compressionInStopsDamping" };
export const k2K1: Message = { code: "physics/stop.k2K1" };
export const stopsRestLossIs: Message = { code: "physics/stop.stopsRestLossIs" };
export const shareOfStopsForce: Message = { code: "physics/stop.shareOfStopsForce" };
export const fadingPartOfStops: Message = { code: "physics/stop.fadingPartOfStops" };
export const checkFStaticAt: Message = { code: "physics/stop.checkFStaticAt" };
export const checkAreaUnderStatic: Message = { code: "physics/stop.checkAreaUnderStatic" };
export const usableCompressionOfStop: Message = { code: "physics/stop.usableCompressionOfStop" };
export const stopCannotBePressed = (values: { usable: MessageValue }): Message => ({ code: "physics/stop.stopCannotBePressed", values });
export const stopHasNoForce: Message = { code: "physics/stop.stopHasNoForce" };
export const pointOfStopsForce: Message = { code: "physics/stop.pointOfStopsForce" };
export const stopsForceCurveMust = (values: { depth: MessageValue }): Message => ({ code: "physics/stop.stopsForceCurveMust", values });
export const nNearestWholeNumber = (values: { firstStep: MessageValue; lastStep: MessageValue }): Message => ({ code: "physics/stop.nNearestWholeNumber", values });
export const classR5N: Message = { code: "physics/stop.classR5N" };

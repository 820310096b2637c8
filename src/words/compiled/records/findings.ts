/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const becameMedianOfMeasurements = (values: { day: MessageValue; reading: MessageValue; rounded: MessageValue; value: MessageValue; n: MessageValue }): Message => ({ code: "records/findings.becameMedianOfMeasurements", values });
export const noVehicleOfLibrary: Message = { code: "records/findings.noVehicleOfLibrary" };

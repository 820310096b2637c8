/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const atWhichZIs: Message = { code: "physics/motion.atWhichZIs" };
export const xPQD: Message = { code: "physics/motion.xPQD" };
export const asinLength = (values: { heightOfItsInnerEnd: MessageValue; heightOfItsOuterEnd: MessageValue }): Message => ({ code: "physics/motion.asinLength", values });
export const tanLTanU: Message = { code: "physics/motion.tanLTanU" };

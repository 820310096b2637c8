/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../../message.ts";
export const dsDCosW: Message = { code: "physics/motion/contact.dsDCosW" };
export const dsDQSin: Message = { code: "physics/motion/contact.dsDQSin" };

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../../message.ts";
export const mustNotBeEmpty: Message = { code: "records/check/schema.mustNotBeEmpty" };
export const isNotDateAnd: Message = { code: "records/check/schema.isNotDateAnd" };

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message } from "../../message.ts";
export const somethingCameInThat: Message = { code: "records/exchanged.somethingCameInThat" };
export const whatCameIn: Message = { code: "records/exchanged.whatCameIn" };
export const checkCameInFrom: Message = { code: "records/exchanged.checkCameInFrom" };
export const check: Message = { code: "records/exchanged.check" };
export const photoCameInThat: Message = { code: "records/exchanged.photoCameInThat" };
export const somethingCameInThatIs: Message = { code: "records/exchanged.somethingCameInThatIs" };
export const whatCameFromReview: Message = { code: "records/exchanged.whatCameFromReview" };

/* Written by `npm run words` from the catalogue; change it there. */
import type { Message, MessageValue } from "../../message.ts";
export const thisPictureCantBe: Message = { code: "records/photo.thisPictureCantBe" };
export const thisFileIsToo = (values: { file: MessageValue; mostBytes: MessageValue }): Message => ({ code: "records/photo.thisFileIsToo", values });
export const thisPictureHasPixels = (values: { width: MessageValue; height: MessageValue }): Message => ({ code: "records/photo.thisPictureHasPixels", values });

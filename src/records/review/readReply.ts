import * as z from "zod/mini";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/review.ts";
import type { Words } from "../../words/message.ts";
import { recordBounds } from "../check/recordFormat.ts";
import { readJsonText } from "../text/jsonText.ts";
import { notAhead } from "../text/moment.ts";
import { isPlainObject } from "../text/plainObject.ts";
import { type Reply, replyFormat, replyVersion } from "./reply.ts";

const label = z.string().check(z.maxLength(recordBounds.labelCharacters));

const replySchema = z.looseObject({
  format: z.literal(replyFormat),
  version: z.literal(replyVersion),
  id: label.check(z.minLength(1)),
  checkId: label.check(z.minLength(1)),
  answers: z.optional(label),
  createdAt: label,
  from: label,
  kind: z.enum(["accept", "askAgain", "otherPart"]),
  vehicle: label,
  axle: z.enum(["front", "rear"]),
  readings: z.array(label.check(z.regex(/^[A-Za-z0-9.]+$/))).check(z.maxLength(100)),
  text: z.string().check(z.maxLength(recordBounds.notesCharacters)),
});

/** Letters of all its fields at their longest, each spelled by its code. */
const mostCharacters = 500_000;

/** Does this text say that it is a reply? Enough to tell it from a check. */
export function looksLikeReply(text: string): boolean {
  return /^\ufeff?\s*\{\s*"format"\s*:\s*"stopfit-reply"/.test(text);
}

/** A desk's reply from the text of a file; its date never lies ahead. */
export function readReplyText(text: string, what: Words = messages.file): Outcome<Reply> {
  if (text.length > mostCharacters) return notAReply(what);
  const json = readJsonText(text, what);
  if (!json.ok) return json;
  const { value } = json;
  const version = isPlainObject(value) ? value.version : undefined;
  if (typeof version === "number" && version > replyVersion) {
    return fail("newerVersion", [messages.wasMadeByNewer({ what })]);
  }
  const parsed = replySchema.safeParse(value);
  return parsed.success
    ? succeed({ ...(value as Reply), createdAt: notAhead(parsed.data.createdAt) })
    : notAReply(what);
}

function notAReply(what: Words): Outcome<never> {
  return fail("notAReply", [messages.isNotWholeReply({ what })]);
}

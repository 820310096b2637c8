import * as z from "zod/mini";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/exchanged.ts";
import { decisionSchema } from "../backup/backupLine.ts";
import type { Decision } from "../review/decision.ts";
import { canonicalText } from "../text/canonicalText.ts";
import { readJsonText } from "../text/jsonText.ts";
import { notAhead } from "../text/moment.ts";

/** What people of a shared desk tell each other: a decision, or that what is personal of a check went. */
export type DeskEvent =
  | { readonly kind: "decision"; readonly decision: Decision }
  | { readonly kind: "erased"; readonly checkId: string; readonly at: string };

const eventFormat = "stopfit-desk-event";
const eventVersion = 1;

const schema = z.discriminatedUnion("kind", [
  z.object({
    format: z.literal(eventFormat),
    version: z.literal(eventVersion),
    kind: z.literal("decision"),
    decision: decisionSchema,
  }),
  z.object({
    format: z.literal(eventFormat),
    version: z.literal(eventVersion),
    kind: z.literal("erased"),
    checkId: z.string().check(z.maxLength(100)),
    at: z.string().check(z.maxLength(40)),
  }),
]);

/** Letters of a decision's fields at their longest, each spelled by its code. */
const mostCharacters = 500_000;

const notADeskEvent = fail("notADeskEvent", [messages.somethingCameInThatIs]);

export function eventText(event: DeskEvent): string {
  return canonicalText({ format: eventFormat, version: eventVersion, ...event });
}

/**
 * An event out of the stream. Who published it, about which check and under which key stands in its subject,
 * put there by the engine; what it says itself of these does not count.
 */
export function readDeskEvent(
  body: string,
  told: {
    readonly person: string;
    readonly checkId: string;
    readonly key: string;
    readonly sequence: number;
  },
): Outcome<DeskEvent> {
  if (body.length > mostCharacters) return notADeskEvent;
  const json = readJsonText(body, messages.whatCameFromReview);
  if (!json.ok) return json;
  const parsed = schema.safeParse(json.value);
  if (!parsed.success) return notADeskEvent;
  const { data } = parsed;
  const { person, checkId, key, sequence } = told;
  if (data.kind === "erased") return succeed({ kind: "erased", checkId, at: notAhead(data.at) });
  const given = Object.fromEntries(
    Object.entries(data.decision).filter(([, value]) => value !== undefined),
  ) as unknown as Decision;
  return succeed({
    kind: "decision",
    decision: { ...given, checkId, key, by: person, at: notAhead(given.at), shared: { sequence } },
  });
}

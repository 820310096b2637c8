import * as z from "zod/mini";
import { fail, type Outcome, succeed } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/records/backup.ts";
import { entriesWithChoices } from "../check/choicesAmongEntries.ts";
import { recordBounds } from "../check/recordFormat.ts";
import { soundStored } from "../check/soundStored.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import { type Decision, decisionKinds } from "../review/decision.ts";
import { type Incoming, type Way, ways } from "../review/submission.ts";
import { readJsonText } from "../text/jsonText.ts";
import { notAhead } from "../text/moment.ts";

const backupFormat = "stopfit-backup";
const backupVersion = 1;

/**
 * A backup is a text of lines, each one JSON value: the header, then what is kept, then the end with the
 * number of lines between, by which a backup that was cut short is known. It can be of any length and is
 * written and read a line at a time.
 */
export type BackupLine =
  | {
      readonly kind: "header";
      readonly createdAt: string;
      /** The device that made it; absent in backups made before there was one. */
      readonly phone?: string;
    }
  | {
      readonly kind: "submission";
      readonly text: string;
      readonly receivedAt: string;
      readonly sentAt?: string;
      readonly from?: string;
      readonly place?: number;
      readonly way: Way;
      readonly photosLeftOut: number;
    }
  | { readonly kind: "decision"; readonly decision: Decision }
  | { readonly kind: "check"; readonly check: StoredCheck }
  | { readonly kind: "end"; readonly lines: number };

/** A line as it is restored: a submission with what its text holds. */
export type BackupEntry =
  | Exclude<BackupLine, { readonly kind: "submission" }>
  | { readonly kind: "submission"; readonly incoming: Incoming };

export function backupLineText(line: BackupLine): string {
  return `${JSON.stringify(contentOf(line))}\n`;
}

function contentOf(line: BackupLine): object {
  if (line.kind === "header") return { format: backupFormat, version: backupVersion, ...line };
  if (line.kind !== "check") return line;
  const { choices: _, ...check } = line.check;
  return { kind: line.kind, check: { ...check, entries: entriesWithChoices(line.check) } };
}

/** A backup is told from all else by its beginning, whatever its size and name. */
export function looksLikeBackup(beginning: string): boolean {
  return /^\ufeff?\s{0,100}\{"format":"stopfit-backup"/.test(beginning);
}

const short = z.string().check(z.maxLength(200));
const filled = short.check(z.minLength(1));
const time = z.string().check(
  z.regex(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/),
  z.refine((text) => !Number.isNaN(Date.parse(text))),
);
const long = z.string().check(z.maxLength(recordBounds.notesCharacters));
const count = z.int().check(z.gte(0));

export const decisionSchema = z.object({
  key: filled,
  checkId: filled,
  submission: filled,
  kind: z.enum(decisionKinds),
  by: short,
  at: time,
  note: long,
  readings: z.optional(z.array(short).check(z.maxLength(200))),
  stop: z.optional(short),
  part: z.optional(z.object({ partNumber: filled, revision: z.optional(filled) })),
  reply: z.optional(long),
  undoes: z.optional(short),
});

/** What a check of any version must have; `soundStored` gives it today's shape. */
const storedSchema = z.looseObject({ id: filled, record: z.looseObject({}) });

const lineSchema = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("header"),
    format: z.literal(backupFormat),
    version: z.int().check(z.gte(1)),
    createdAt: time,
    phone: z.optional(short),
  }),
  z.object({
    kind: z.literal("submission"),
    text: z.string(),
    receivedAt: time,
    sentAt: z.optional(time),
    from: z.optional(long),
    place: z.optional(z.number()),
    way: z.enum(ways),
    photosLeftOut: count,
  }),
  z.object({ kind: z.literal("decision"), decision: decisionSchema }),
  z.object({ kind: z.literal("check"), check: storedSchema }),
  z.object({ kind: z.literal("end"), lines: count }),
]);

function withoutAbsent<Shape extends object>(shape: Shape): Shape {
  const given = Object.entries(shape).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as Shape;
}

/** One line of a backup, or why it is none. No date of it lies ahead. */
export function readBackupLine(text: string, number: number): Outcome<BackupLine> {
  const json = readJsonText(text, messages.lineOfBackup({ number }));
  if (!json.ok) return damaged(number);
  const parsed = lineSchema.safeParse(json.value);
  if (!parsed.success) return damaged(number);
  const { data } = parsed;
  switch (data.kind) {
    case "header":
      return data.version > backupVersion ? newer(data.version) : succeed(headerOf(data));
    case "check": {
      const check = soundStored(notFromAhead(data.check));
      return check === null ? damaged(number) : succeed({ kind: "check", check });
    }
    case "decision": {
      const decision = withoutAbsent({ ...data.decision, at: notAhead(data.decision.at) });
      return succeed({ kind: "decision", decision: decision as Decision });
    }
    case "submission":
      return succeed(
        withoutAbsent({
          ...data,
          receivedAt: notAhead(data.receivedAt),
          sentAt: data.sentAt === undefined ? undefined : notAhead(data.sentAt),
        }) as BackupLine,
      );
    default:
      return succeed(data);
  }
}

/** A version that is dated ahead is no newer than its beginning: nobody measured it then. */
function notFromAhead(check: { readonly [field: string]: unknown }): unknown {
  const now = Date.now();
  const isAhead = (moment: unknown) => typeof moment === "string" && Date.parse(moment) > now;
  const { createdAt, updatedAt, deletedAt, ...rest } = check;
  const begun = isAhead(createdAt) ? new Date(0).toISOString() : createdAt;
  return {
    ...rest,
    createdAt: begun,
    updatedAt: isAhead(updatedAt) ? begun : updatedAt,
    ...(!isAhead(deletedAt) && { deletedAt }),
  };
}

function headerOf({ createdAt, phone }: { createdAt: string; phone?: string | undefined }) {
  return {
    kind: "header" as const,
    createdAt: notAhead(createdAt),
    ...(phone !== undefined && { phone }),
  };
}

function newer(version: number): Outcome<never> {
  return fail("backupNewer", [messages.backupWasMadeBy({ version })]);
}

function damaged(number: number): Outcome<never> {
  return fail("backupDamaged", [messages.lineOfBackupCant({ number })]);
}

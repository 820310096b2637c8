import * as z from "zod/mini";
import { fail, type Outcome, succeed } from "../physics/outcome.ts";
import { recordBounds } from "../records/check/checkRecord.ts";
import { soundStored } from "../records/check/soundStored.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import type { Decision } from "../records/review/decision.ts";
import type { Way } from "../records/review/submission.ts";

export const backupFormat = "stopfit-backup";
export const backupVersion = 1;

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
      readonly place?: number;
      readonly way: Way;
      readonly photosLeftOut: number;
    }
  | { readonly kind: "decision"; readonly decision: Decision }
  | { readonly kind: "check"; readonly check: StoredCheck }
  | { readonly kind: "end"; readonly lines: number };

export function backupLineText(line: BackupLine): string {
  const content =
    line.kind === "header" ? { format: backupFormat, version: backupVersion, ...line } : line;
  return `${JSON.stringify(content)}\n`;
}

const short = z.string().check(z.maxLength(200));
const time = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/));
const long = z.string().check(z.maxLength(recordBounds.notesCharacters));

const decisionSchema = z.looseObject({
  key: short,
  checkId: short,
  submission: short,
  kind: z.enum(["accept", "askAgain", "otherPart", "undo"]),
  by: short,
  at: time,
  note: long,
  readings: z.optional(z.array(short).check(z.maxLength(200))),
  stop: z.optional(short),
  reply: z.optional(long),
  undoes: z.optional(short),
});

/** What a check of any version must have; `soundStored` gives it today's shape. */
const storedSchema = z.looseObject({ id: short.check(z.minLength(1)), record: z.looseObject({}) });

const lineSchema = z.discriminatedUnion("kind", [
  z.looseObject({
    kind: z.literal("header"),
    format: z.literal(backupFormat),
    version: z.number(),
    createdAt: time,
    phone: z.optional(short),
  }),
  z.looseObject({
    kind: z.literal("submission"),
    text: z.string(),
    receivedAt: time,
    sentAt: z.optional(time),
    place: z.optional(z.number()),
    way: z.enum(["file", "link", "code", "backup"]),
    photosLeftOut: z.number(),
  }),
  z.looseObject({ kind: z.literal("decision"), decision: decisionSchema }),
  z.looseObject({ kind: z.literal("check"), check: storedSchema }),
  z.looseObject({ kind: z.literal("end"), lines: z.number() }),
]);

/** One line of a backup, or why it is none. */
export function readBackupLine(text: string, number: number): Outcome<BackupLine> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return damaged(number);
  }
  const parsed = lineSchema.safeParse(value);
  if (!parsed.success) return damaged(number);
  if (parsed.data.kind === "header" && parsed.data.version > backupVersion) {
    return fail("backupNewer", [
      `The backup was made by a newer version of Stopfit (backup version ${parsed.data.version}). Update Stopfit, then restore it again.`,
    ]);
  }
  const line = value as BackupLine;
  if (line.kind !== "check") return succeed(line);
  const check = soundStored(line.check);
  return check === null ? damaged(number) : succeed({ kind: "check", check });
}

function damaged(number: number): Outcome<never> {
  return fail("backupDamaged", [
    `Line ${number} of the backup can't be read. What stands before and after it is restored.`,
  ]);
}

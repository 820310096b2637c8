import type { State } from "../../physics/fitment.ts";
import { capital, spacer } from "../../physics/sentence.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { Fitted, Role } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import type { DecisionKind, DeskState } from "../../records/review/decision.ts";
import type { Listed } from "../../records/review/listedSubmission.ts";
import type { Way } from "../../records/review/submission.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { language } from "../../words/language.ts";

export const deskStateWords: Record<DeskState, string> = {
  new: messages.newWord,
  accepted: messages.accepted,
  askedAgain: messages.askedAgain,
  otherPart: messages.otherPartAdvised,
};

export const decisionWords: Record<DecisionKind, string> = {
  accept: messages.accepted,
  askAgain: messages.askedForReadingsAgain,
  otherPart: messages.advisedAnotherPart,
  undo: messages.tookDecisionBack,
};

export const verdictShort: Record<State, string> = {
  ok: messages.fits,
  care: messages.takeCare,
  no: messages.doesNotFit,
  unsure: messages.notSure,
};

export const wayWords: Record<Way, string> = {
  file: messages.asFile,
  link: messages.asLink,
  code: messages.asCode,
  backup: messages.fromBackup2,
  desk: messages.fromPhoneByShared,
};

const roleWords: Record<Role, string> = {
  installer: messages.installer,
  customer: messages.customer,
  support: messages.support,
};

export function whoWords({ who, role }: Pick<Listed, "who" | "role">): string {
  return who ? `${who}, ${roleWords[role]}` : capital(roleWords[role]);
}

/** "today", "3 days", "5 weeks", "4 months", "2 years". */
export function ageWords(since: string, now: number = Date.now()): string {
  const days = Math.floor((now - Date.parse(since)) / 86_400_000);
  if (!Number.isFinite(days)) return messages.unknownAge;
  if (days < 1) return messages.today;
  if (days < 2) return messages.n1Day;
  if (days < 21) return messages.days({ days });
  if (days < 90) return messages.weeks({ days: Math.floor(days / 7) });
  return days < 730
    ? messages.months({ days: Math.floor(days / 30.44) })
    : messages.years({ days: Math.floor(days / 365.25) });
}

export function momentText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return "";
  return date.toLocaleString(language, {
    day: "numeric",
    month: "short",
    year: "numeric",
    hour: "2-digit",
    minute: "2-digit",
  });
}

const counted = {
  check: messages.checkCount,
  moreCheck: messages.moreCheckCount,
  file: messages.fileCount,
  moreFile: messages.moreFileCount,
  thing: messages.thingCount,
  oddReading: messages.oddReadingCount,
} as const;

export function countWords(count: number, what: keyof typeof counted): string {
  return counted[what]({ count, told: count.toLocaleString(language) });
}

/** "HL-1060, revision B, spacer 10 mm, by Ada on 31 May 2026, at 82 340 km"; the unit is the reader's. */
export function fittedWords(fitted: Fitted, unit: LengthUnit): string {
  const { spacerMm, by, at, odometer } = fitted;
  return [
    said(partText(fitted)),
    ...(spacerMm > 0 ? [messages.spacer({ spacerMm: quantityText(spacer(spacerMm), unit) })] : []),
    messages.byOn({ by, at: dateText(at) }),
    ...(odometer === undefined
      ? []
      : [messages.atKm({ odometer: odometer.toLocaleString(language) })]),
  ].join(", ");
}

import { andList, commaList, type Message, semicolonList } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/review.ts";
import type { Advice, CheckRecord, Fitted } from "../check/checkRecord.ts";
import type { Pack } from "../pack/pack.ts";
import { plainNumber, stopOfPart } from "../pack/packCandidates.ts";
import { adviceWords } from "./adviceWords.ts";
import type { TableCell } from "./csv.ts";
import type { Decision } from "./decision.ts";

/** A part, and of it a revision or batch where only those are looked for. */
export interface PartWanted {
  readonly partNumber: string;
  readonly revision?: string;
  readonly batch?: string;
}

interface NamedPart {
  readonly partNumber?: string | undefined;
  readonly revision?: string | undefined;
  readonly batch?: string | undefined;
}

/** What a person at the desk advised last. */
export interface DeskAdvice extends NamedPart {
  readonly name: string;
  readonly by: string;
  readonly at: string;
}

/** In what a part that was fitted differs from one that was advised or checked. */
type FittedOtherwise = "part" | "revision" | "spacer" | "nothing";

/** What was fitted held against what was advised: the desk's advice first, else the app's newest, else the part checked. */
export interface FittedAgainst {
  readonly whose: "desk" | "app" | "check";
  /** Empty: as advised. "nothing": the app prescribed no part. */
  readonly otherwise: readonly FittedOtherwise[];
}

/** A check in which a part was checked, advised or fitted. */
export interface TracedCheck {
  readonly checkId: string;
  /** The key of its newest version. */
  readonly key: string;
  readonly vehicle: string;
  readonly axle: CheckRecord["axle"];
  readonly who: string;
  readonly contact: string;
  readonly createdAt: string;
  readonly isChecked: boolean;
  /** By the app on the phone, as the record claims. */
  readonly isAdvisedByApp: boolean;
  readonly isAdvisedByDesk: boolean;
  readonly isFitted: boolean;
  /** What the app advised by the record, newest first, whichever part it was. */
  readonly byApp: readonly Advice[];
  /** Null: nothing, or the one that was checked. */
  readonly byDesk: DeskAdvice | null;
  readonly fitted: Fitted | null;
  /** Null where it is not known. */
  readonly against: FittedAgainst | null;
}

/** Is it the part? A revision or batch that is asked for has to be told, and to be that one. */
export function isWanted(part: NamedPart, wanted: PartWanted): boolean {
  const isSame = (name: "revision" | "batch") =>
    wanted[name] === undefined || plainNumber(part[name] ?? "") === plainNumber(wanted[name]);
  return (
    part.partNumber !== undefined &&
    plainNumber(part.partNumber) === plainNumber(wanted.partNumber) &&
    isSame("revision") &&
    isSame("batch")
  );
}

/** What the desk advised last, as a part; of decisions that kept none, by the name of a stop of the pack. */
function deskAdvice(decisions: readonly Decision[], pack: Pack): DeskAdvice | null {
  const undone = new Set(decisions.map(({ undoes }) => undoes));
  const advice = decisions
    .filter(({ key, stop }) => stop !== undefined && !undone.has(key))
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1);
  if (advice?.stop === undefined) return null;
  const { stop: name, by, at } = advice;
  const named = name.replace(/ with a spacer of .*$/, "").replace(/ \(estimate\)$/, "");
  const part = advice.part ?? pack.stops.find((each) => each.name === named);
  return { name, by, at, partNumber: part?.partNumber, revision: part?.revision };
}

/** Spacers that differ by less are the same one, mm. */
const sameSpacerMm = 0.5;

/** What was fitted against the desk's advice, else the newest of the app, else the part checked; null: not known. */
export function fittedAgainst(
  fitted: Fitted | null,
  byDesk: DeskAdvice | null,
  newest: Advice | undefined,
  checked: NamedPart,
): FittedAgainst | null {
  if (fitted === null) return null;
  if (byDesk === null && newest !== undefined && newest.part === undefined) {
    return { whose: "app", otherwise: ["nothing"] };
  }
  const told: NamedPart & { readonly spacerMm?: number } = byDesk ?? newest?.part ?? checked;
  const { partNumber, revision, spacerMm } = told;
  if (partNumber === undefined) return null;
  const isOtherPart = plainNumber(partNumber) !== plainNumber(fitted.partNumber);
  const isOtherRevision =
    revision !== undefined &&
    fitted.revision !== undefined &&
    plainNumber(revision) !== plainNumber(fitted.revision);
  const isOtherSpacer =
    spacerMm !== undefined && Math.abs(spacerMm - fitted.spacerMm) > sameSpacerMm;
  return {
    whose: byDesk !== null ? "desk" : newest !== undefined ? "app" : "check",
    otherwise: [
      ...(isOtherPart ? (["part"] as const) : isOtherRevision ? (["revision"] as const) : []),
      ...(isOtherSpacer ? (["spacer"] as const) : []),
    ],
  };
}

/** What a check has to do with a part; null: nothing. */
export function tracedCheck(
  { key, record }: { readonly key: string; readonly record: CheckRecord },
  decisions: readonly Decision[],
  pack: Pack,
  wanted: PartWanted,
): TracedCheck | null {
  const { author, vehicle, axle, stop, fitted = null, advised = [] } = record;
  const byDesk = deskAdvice(decisions, pack);
  const byApp = [...advised].reverse();
  const isChecked = isWanted(stop, wanted);
  // A batch is known of what was fitted or checked, never of advice.
  const isAdvice = (part: NamedPart | null | undefined) =>
    wanted.batch === undefined && part !== null && part !== undefined && isWanted(part, wanted);
  const isAdvisedByApp = byApp.some(({ part }) => isAdvice(part));
  const isAdvisedByDesk = isAdvice(byDesk);
  const isFitted = fitted !== null && isWanted(fitted, wanted);
  if (!isChecked && !isAdvisedByApp && !isAdvisedByDesk && !isFitted) return null;
  return {
    checkId: record.id,
    key,
    vehicle: vehicle.label,
    axle,
    who: author.name?.trim() ?? "",
    contact: author.contact?.trim() ?? "",
    createdAt: record.createdAt,
    isChecked,
    isAdvisedByApp,
    isAdvisedByDesk,
    isFitted,
    byApp,
    byDesk,
    fitted,
    against: fittedAgainst(fitted, byDesk, byApp[0], stop),
  };
}

/**
 * Is it a check of the part, of which nobody told the revision or batch that is looked for? It may have it, so
 * it is named beside those that do. What was fitted counts alone, where that was told.
 */
export function isUntold(
  { stop, fitted, advised = [] }: CheckRecord,
  decisions: readonly Decision[],
  pack: Pack,
  wanted: PartWanted,
): boolean {
  const asked = (["revision", "batch"] as const).filter((name) => wanted[name] !== undefined);
  const advice = [...advised.map(({ part }) => part), deskAdvice(decisions, pack)];
  const parts: readonly (NamedPart | null | undefined)[] = fitted ? [fitted] : [stop, ...advice];
  return parts.some((part) => {
    if (!part) return false;
    const untold = asked.filter((name) => part[name] === undefined);
    const told: PartWanted = {
      partNumber: wanted.partNumber,
      ...Object.fromEntries(
        asked.filter((name) => !untold.includes(name)).map((name) => [name, wanted[name]]),
      ),
    };
    return untold.length > 0 && isWanted(part, told);
  });
}

const whoseWords: { readonly [Whose in FittedAgainst["whose"]]: Message } = {
  desk: messages.reviewDeskAdvised,
  app: messages.appAdvised,
  check: messages.wasChecked,
};

const otherwiseWords: { readonly [Each in FittedOtherwise]: Message } = {
  part: messages.anotherPart,
  revision: messages.anotherRevision,
  spacer: messages.anotherSpacer,
  nothing: messages.part,
};

/** "yes, what the app advised", "no, another spacer than the app advised". */
export function againstWords(against: FittedAgainst | null): Message {
  if (against === null) return messages.notKnown;
  const otherwise = otherwiseText(against);
  return otherwise === null
    ? messages.yesWhat({ whose: whoseWords[against.whose] })
    : messages.no({ otherwise });
}

/** "another spacer than the app advised"; null where it is the same, or not known. */
export function otherwiseText(against: FittedAgainst | null): Message | null {
  if (against === null || against.otherwise.length === 0) return null;
  const { whose, otherwise } = against;
  if (otherwise.includes("nothing")) return messages.partWhereAppPrescribed;
  const words = andList(otherwise.map((each) => otherwiseWords[each]));
  return messages.than({ words, whose: whoseWords[whose] });
}

/** The part as it is asked for, or a sentence. */
export function wantedPart(
  pack: Pack,
  typed: { readonly partNumber: string; readonly revision: string; readonly batch: string },
): PartWanted | null {
  const partNumber = typed.partNumber.trim();
  if (partNumber === "") return null;
  const known = stopOfPart(pack, { partNumber });
  return {
    partNumber: known?.partNumber ?? partNumber,
    ...(typed.revision.trim() !== "" && { revision: typed.revision.trim() }),
    ...(typed.batch.trim() !== "" && { batch: typed.batch.trim() }),
  };
}

/** The heading and lines of the table of traced checks, before they are put into words. */
export const traceHeader = [
  messages.vehicleWord,
  messages.axleWord,
  messages.checkedOn,
  messages.whoWord,
  messages.contactWord,
  messages.partChecked,
  messages.partAdvisedByApp,
  messages.partAdvisedByDesk,
  messages.partFitted,
  messages.appAdvised2,
  messages.appAdvisedPartNumber,
  messages.appAdvisedRevision,
  messages.appAdvisedSpacerMm,
  messages.appAdvisedHeightMm,
  messages.appAdvisedOn,
  messages.appsPartsLibrary,
  messages.appAdvisedBefore,
  messages.deskAdvised,
  messages.deskAdvisedPartNumber,
  messages.deskAdvisedRevision,
  messages.deskAdvisedBy,
  messages.deskAdvisedOn,
  messages.fittedPartNumber,
  messages.fittedRevision,
  messages.fittedBatch,
  messages.spacerMm,
  messages.fittedOn,
  messages.fittedBy,
  messages.odometerKm,
  messages.asAdvised,
  messages.checkId,
] as const;

export function traceLine(traced: TracedCheck): readonly TableCell[] {
  const {
    fitted,
    byDesk,
    byApp: [newest, ...before],
  } = traced;
  const yes = (is: boolean) => (is ? messages.yesWord : messages.noWord);
  return [
    traced.vehicle,
    traced.axle,
    traced.createdAt.slice(0, 10),
    traced.who,
    traced.contact,
    yes(traced.isChecked),
    yes(traced.isAdvisedByApp),
    yes(traced.isAdvisedByDesk),
    yes(traced.isFitted),
    newest && adviceWords(newest),
    newest?.part?.partNumber,
    newest?.part?.revision,
    newest?.part?.spacerMm,
    newest?.part?.heightMm,
    newest?.at.slice(0, 10),
    newest && commaList([newest.pack, newest.edition].filter((each) => each !== undefined)),
    semicolonList(
      before.map((each) =>
        messages.onDay({ advice: adviceWords(each), day: each.at.slice(0, 10) }),
      ),
    ),
    byDesk?.name,
    byDesk?.partNumber,
    byDesk?.revision,
    byDesk?.by,
    byDesk?.at.slice(0, 10),
    fitted?.partNumber,
    fitted?.revision,
    fitted?.batch,
    fitted?.spacerMm,
    fitted?.at.slice(0, 10),
    fitted?.by,
    fitted?.odometer,
    againstWords(traced.against),
    traced.checkId,
  ];
}

import type { CheckRecord, Fitted } from "../check/checkRecord.ts";
import type { Pack } from "../pack/pack.ts";
import { stopOfPart } from "../pack/packCandidates.ts";
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
  readonly isAdvised: boolean;
  readonly isFitted: boolean;
  /** What the desk advised; null: nothing, or the one that was checked. */
  readonly advised: string | null;
  readonly fitted: Fitted | null;
  /** Was what was advised fitted? Null where one of the two is not known. */
  readonly asAdvised: boolean | null;
}

function plain(text: string): string {
  return text.replace(/[\s-]+/g, "").toLowerCase();
}

/** Is it the part? A revision or batch that is asked for has to be told, and to be that one. */
function isWanted(part: NamedPart, wanted: PartWanted): boolean {
  const isSame = (name: "revision" | "batch") =>
    wanted[name] === undefined || plain(part[name] ?? "") === plain(wanted[name]);
  return (
    part.partNumber !== undefined &&
    plain(part.partNumber) === plain(wanted.partNumber) &&
    isSame("revision") &&
    isSame("batch")
  );
}

/** What was advised last as another part, as a part of the pack: it is kept by the stop's name. */
function advisedOf(
  decisions: readonly Decision[],
  pack: Pack,
): NamedPart & { name: string | null } {
  const undone = new Set(decisions.map(({ undoes }) => undoes));
  const advice = decisions
    .filter(({ key, kind }) => kind === "otherPart" && !undone.has(key))
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1);
  const name = advice?.stop ?? null;
  const stop = name === null ? undefined : pack.stops.find((each) => each.name === name);
  return { name, partNumber: stop?.partNumber, revision: stop?.revision };
}

/** What a check has to do with a part; null: nothing. */
export function tracedCheck(
  { key, record }: { readonly key: string; readonly record: CheckRecord },
  decisions: readonly Decision[],
  pack: Pack,
  wanted: PartWanted,
): TracedCheck | null {
  const { author, vehicle, axle, stop, fitted = null } = record;
  const advice = advisedOf(decisions, pack);
  const isChecked = isWanted(stop, wanted);
  // A batch is known of what was fitted or checked, never of advice.
  const { batch: _, ...model } = wanted;
  const isAdvised = wanted.batch === undefined && isWanted(advice, model);
  const isFitted = fitted !== null && isWanted(fitted, wanted);
  if (!isChecked && !isAdvised && !isFitted) return null;
  const told = advice.name === null ? stop.partNumber : advice.partNumber;
  return {
    checkId: record.id,
    key,
    vehicle: vehicle.label,
    axle,
    who: author.name?.trim() ?? "",
    contact: author.contact?.trim() ?? "",
    createdAt: record.createdAt,
    isChecked,
    isAdvised,
    isFitted,
    advised: advice.name,
    fitted,
    asAdvised:
      fitted === null || told === undefined ? null : plain(told) === plain(fitted.partNumber),
  };
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

/** The heading and lines of the table of traced checks. */
export const traceHeader = [
  "vehicle",
  "axle",
  "checked on",
  "who",
  "contact",
  "part checked",
  "part advised",
  "part fitted",
  "fitted part number",
  "fitted revision",
  "fitted batch",
  "spacer mm",
  "fitted on",
  "fitted by",
  "odometer km",
  "as advised",
  "check id",
] as const;

export function traceLine(traced: TracedCheck): readonly (string | number | undefined)[] {
  const { fitted, asAdvised } = traced;
  const yes = (is: boolean) => (is ? "yes" : "no");
  return [
    traced.vehicle,
    traced.axle,
    traced.createdAt.slice(0, 10),
    traced.who,
    traced.contact,
    yes(traced.isChecked),
    yes(traced.isAdvised),
    yes(traced.isFitted),
    fitted?.partNumber,
    fitted?.revision,
    fitted?.batch,
    fitted?.spacerMm,
    fitted?.at.slice(0, 10),
    fitted?.by,
    fitted?.odometer,
    asAdvised === null ? "not known" : yes(asAdvised),
    traced.checkId,
  ];
}

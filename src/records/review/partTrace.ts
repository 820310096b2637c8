import type { CheckRecord, Fitted } from "../check/checkRecord.ts";
import type { Pack } from "../pack/pack.ts";
import { plainNumber, stopOfPart } from "../pack/packCandidates.ts";
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

/** Is it the part? A revision or batch that is asked for has to be told, and to be that one. */
function isWanted(part: NamedPart, wanted: PartWanted): boolean {
  const isSame = (name: "revision" | "batch") =>
    wanted[name] === undefined || plainNumber(part[name] ?? "") === plainNumber(wanted[name]);
  return (
    part.partNumber !== undefined &&
    plainNumber(part.partNumber) === plainNumber(wanted.partNumber) &&
    isSame("revision") &&
    isSame("batch")
  );
}

/** What was advised last, as a part; of decisions that kept none, by the name of a stop of the pack. */
function advisedOf(
  decisions: readonly Decision[],
  pack: Pack,
): NamedPart & { name: string | null } {
  const undone = new Set(decisions.map(({ undoes }) => undoes));
  const advice = decisions
    .filter(({ key, stop }) => stop !== undefined && !undone.has(key))
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1);
  const name = advice?.stop ?? null;
  const named = name?.replace(/ with a spacer of .*$/, "").replace(/ \(estimate\)$/, "");
  const part = advice?.part ?? pack.stops.find((each) => each.name === named);
  return { name, partNumber: part?.partNumber, revision: part?.revision };
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
      fitted === null || told === undefined
        ? null
        : plainNumber(told) === plainNumber(fitted.partNumber),
  };
}

/**
 * Is it a check of the part, of which nobody told the revision or batch that is looked for? It may have it, so
 * it is named beside those that do.
 */
export function isUntold({ stop, fitted }: CheckRecord, wanted: PartWanted): boolean {
  const part: NamedPart = fitted ?? stop;
  const asked = (["revision", "batch"] as const).filter((name) => wanted[name] !== undefined);
  const untold = asked.filter((name) => part[name] === undefined);
  const told: PartWanted = {
    partNumber: wanted.partNumber,
    ...Object.fromEntries(
      asked.filter((name) => !untold.includes(name)).map((name) => [name, wanted[name]]),
    ),
  };
  return untold.length > 0 && isWanted(part, told);
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

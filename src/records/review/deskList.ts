import type { State } from "../../physics/fitment.ts";
import type { Axle } from "../check/checkRecord.ts";
import type { DeskCheck, DeskState } from "./decision.ts";

export type SortKey = "new" | "severity" | "age" | "vehicle" | "axle" | "who" | "state";

/** How the desk's list is looked at. */
export interface DeskView {
  readonly search: string;
  readonly sort: SortKey;
  readonly reversed: boolean;
  readonly verdict: State | "waiting" | "all";
  readonly state: DeskState | "all";
  readonly axle: Axle | "all";
  readonly onlyOdd: boolean;
}

export const wholeView: DeskView = {
  search: "",
  sort: "new",
  reversed: false,
  verdict: "all",
  state: "all",
  axle: "all",
  onlyOdd: false,
};

/** Does it leave anything out? */
export function isFiltered({ search, verdict, state, axle, onlyOdd }: DeskView): boolean {
  return search.trim() !== "" || [verdict, state, axle].some((each) => each !== "all") || onlyOdd;
}

/** What cannot wait comes first; what is not computed yet comes last. */
const severity: { readonly [Each in State]: number } = { no: 0, unsure: 1, care: 2, ok: 3 };
const states: { readonly [Each in DeskState]: number } = {
  new: 0,
  askedAgain: 1,
  otherPart: 2,
  accepted: 3,
};

function severityOf({ latest }: DeskCheck): number {
  return latest.computed === undefined ? 4 : severity[latest.computed.verdict];
}

const collator = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/** What a list is sorted by: numbers among each other, or words. */
const sortedBy: { readonly [Key in SortKey]: (check: DeskCheck) => number | string } = {
  // What nobody has decided on before all else.
  new: ({ state }) => (state === "new" ? 0 : 1),
  severity: severityOf,
  age: () => 0,
  vehicle: ({ latest }) => latest.vehicle,
  axle: ({ latest }) => (latest.axle === "front" ? 0 : 1),
  // Those without a name after those with one.
  who: ({ latest }) => latest.who || "\uffff",
  state: ({ state }) => states[state],
};

interface Sortable {
  readonly check: DeskCheck;
  readonly by: number | string;
  /** When it was made, or came in: oldest first, who has waited longest. */
  readonly since: number;
}

/** When it was made; one dated ahead, when it came in. */
function madeAt({ latest: { createdAt, receivedAt } }: DeskCheck): number {
  const made = Date.parse(createdAt);
  return made > Date.now() ? Date.parse(receivedAt) : made;
}

function receivedAt({ latest }: DeskCheck): number {
  return Date.parse(latest.receivedAt);
}

function compare(a: Sortable, b: Sortable): number {
  if (typeof a.by === "number" && typeof b.by === "number") return a.by - b.by;
  return collator.compare(String(a.by), String(b.by));
}

const haystacks = new WeakMap<object, string>();

function haystack({ latest }: DeskCheck): string {
  const known = haystacks.get(latest);
  if (known !== undefined) return known;
  const { vehicle, who, contact, stop, checkId, axle, role, job, jobNumber } = latest;
  const number = jobNumber === undefined ? [] : ["job", jobNumber];
  const text = [vehicle, who, contact, stop, checkId, axle, role, job, ...number]
    .join("\n")
    .toLowerCase();
  haystacks.set(latest, text);
  return text;
}

/** The checks that a view shows, in its order. Equals stand oldest first. */
export function viewed(checks: readonly DeskCheck[], view: DeskView): DeskCheck[] {
  const words = view.search.toLowerCase().split(/\s+/).filter(Boolean);
  const found = checks.filter((check) => {
    const { latest, state } = check;
    const verdict = latest.computed?.verdict ?? "waiting";
    if (view.verdict !== "all" && verdict !== view.verdict) return false;
    if (view.state !== "all" && state !== view.state) return false;
    if (view.axle !== "all" && latest.axle !== view.axle) return false;
    if (view.onlyOdd && (latest.computed?.odd ?? 0) === 0) return false;
    return words.length === 0 || words.every((word) => haystack(check).includes(word));
  });
  const by = sortedBy[view.sort];
  const sign = view.reversed ? -1 : 1;
  const sinceOf = view.sort === "new" ? receivedAt : madeAt;
  const sortable = found.map(
    (check): Sortable => ({ check, by: by(check), since: sinceOf(check) }),
  );
  sortable.sort(
    (a, b) =>
      sign * compare(a, b) ||
      (view.sort === "age" ? sign : 1) * (a.since - b.since) ||
      (a.check.latest.key < b.check.latest.key ? -1 : 1),
  );
  return sortable.map(({ check }) => check);
}

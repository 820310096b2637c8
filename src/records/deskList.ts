import type { State } from "../physics/fitment.ts";
import type { Axle } from "./checkRecord.ts";
import type { DeskCheck, DeskState } from "./decision.ts";

export type SortKey = "severity" | "age" | "vehicle" | "axle" | "who" | "state";

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
  sort: "severity",
  reversed: false,
  verdict: "all",
  state: "all",
  axle: "all",
  onlyOdd: false,
};

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

const orders: { readonly [Key in SortKey]: (a: DeskCheck, b: DeskCheck) => number } = {
  severity: (a, b) => severityOf(a) - severityOf(b),
  age: byAge,
  vehicle: (a, b) => collator.compare(a.latest.vehicle, b.latest.vehicle),
  axle: (a, b) => (a.latest.axle === b.latest.axle ? 0 : a.latest.axle === "front" ? -1 : 1),
  who: (a, b) => collator.compare(whoOf(a), whoOf(b)),
  state: (a, b) => states[a.state] - states[b.state],
};

/** Those without a name after those with one. */
function whoOf({ latest }: DeskCheck): string {
  return latest.who || "\uffff";
}

/** Oldest first: who has waited longest. */
function byAge(a: DeskCheck, b: DeskCheck): number {
  if (a.latest.createdAt === b.latest.createdAt) return a.latest.key < b.latest.key ? -1 : 1;
  return a.latest.createdAt < b.latest.createdAt ? -1 : 1;
}

const haystacks = new WeakMap<object, string>();

function haystack({ latest }: DeskCheck): string {
  const known = haystacks.get(latest);
  if (known !== undefined) return known;
  const { vehicle, who, contact, stop, checkId, axle, role } = latest;
  const text = [vehicle, who, contact, stop, checkId, axle, role].join("\n").toLowerCase();
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
  const order = orders[view.sort];
  const sign = view.reversed ? -1 : 1;
  return found.sort((a, b) => sign * order(a, b) || byAge(a, b));
}

import type { DesignEvent, UseRules } from "../../physics/fitment.ts";
import { rulesOf } from "../../physics/road/index.ts";
import { length, type Quantity, type Sentence } from "../../physics/sentence.ts";
import type { CheckRecord } from "../check/checkRecord.ts";
import type { PackPlatforms } from "../pack/pack.ts";
import { canonicalText } from "../text/canonicalText.ts";

/** What the desk requires for a use: from its own parts library, where that says so. */
function houseRules(
  record: CheckRecord,
  pack: PackPlatforms | null,
): Partial<UseRules> | undefined {
  return pack?.rules?.[record.vehicle.use];
}

/**
 * The record as a desk judges it: by the desk's own demands, whatever the sender's check demanded of the
 * stop. Everything that was measured stays.
 */
export function judgedAtDesk(record: CheckRecord, pack: PackPlatforms | null): CheckRecord {
  const { rules: _, ...measured } = record;
  const rules = houseRules(record, pack);
  return rules === undefined ? measured : { ...measured, rules };
}

type RuleName = keyof UseRules;

function roadSpeed(value: number): Quantity {
  return { kind: "roadSpeed", value };
}

function eventWords(event: DesignEvent): Sentence {
  if (event.kind === "landing") return ["a landing of ", length(1000 * event.heightM)];
  return [
    event.kind === "obstacle" ? "an obstacle of " : "a speed bump of ",
    length(1000 * event.heightM),
    " and ",
    length(1000 * event.lengthM),
    " at ",
    roadSpeed(event.speedKmPerH),
  ];
}

function eventsWords(events: readonly DesignEvent[]): Sentence {
  if (events.length === 0) return ["none"];
  return events.flatMap((event, index) => [...(index > 0 ? ["; "] : []), ...eventWords(event)]);
}

const demands: {
  readonly [Name in RuleName]: {
    readonly name: string;
    readonly words: (value: UseRules[Name]) => Sentence;
  };
} = {
  roadClass: { name: "road class", words: (value) => [value] },
  speedKmPerH: { name: "speed", words: (value) => [roadSpeed(value)] },
  allowedContactsPerKm: {
    name: "contacts allowed",
    words: (value) => [{ kind: "contactRate", value }],
  },
  accelerationCapG: {
    name: "greatest acceleration",
    words: (value) => [{ kind: "acceleration", value }],
  },
  events: { name: "obstacles and landings", words: eventsWords },
  reserveMm: { name: "reserve wanted", words: (value) => [length(value)] },
  balanceMm: { name: "difference of the sides allowed", words: (value) => [length(value)] },
  roadKurtosis: { name: "kurtosis of the road", words: (value) => [`${value}`] },
};

/** One demand of a check that is not this desk's. */
export interface OtherDemand {
  readonly name: RuleName;
  readonly words: string;
  /** The check's. */
  readonly theirs: Sentence;
  /** This desk's, by which it is judged here. */
  readonly ours: Sentence;
}

/** What a check demands otherwise than this desk. */
export function otherDemands(record: CheckRecord, pack: PackPlatforms | null): OtherDemand[] {
  const { use } = record.vehicle;
  const theirs = rulesOf(use, record.rules);
  const ours = rulesOf(use, houseRules(record, pack));
  const compared = <Name extends RuleName>(name: Name): OtherDemand[] => {
    if (canonicalText(theirs[name]) === canonicalText(ours[name])) return [];
    const { name: words, words: said } = demands[name];
    return [{ name, words, theirs: said(theirs[name]), ours: said(ours[name]) }];
  };
  return (Object.keys(demands) as RuleName[]).flatMap((name) => compared(name));
}

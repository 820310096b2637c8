import type { DesignEvent, UseRules } from "../../physics/fitment.ts";
import { rulesOf } from "../../physics/road/index.ts";
import {
  length,
  type Message,
  type Quantity,
  type Sentence,
  semicolonList,
} from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/review.ts";
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

function eventWords(event: DesignEvent): Message {
  if (event.kind === "landing")
    return messages.landingOf({ heightM: length(1000 * event.heightM) });
  return messages.obstacleOf({
    kind: event.kind,
    heightM: length(1000 * event.heightM),
    lengthM: length(1000 * event.lengthM),
    roadSpeed: roadSpeed(event.speedKmPerH),
  });
}

function eventsWords(events: readonly DesignEvent[]): Sentence {
  return [events.length === 0 ? messages.noneWord : semicolonList(events.map(eventWords))];
}

const demands: {
  readonly [Name in RuleName]: {
    readonly name: Message;
    readonly words: (value: UseRules[Name]) => Sentence;
  };
} = {
  roadClass: { name: messages.roadClass, words: (value) => [value] },
  speedKmPerH: { name: messages.speed, words: (value) => [roadSpeed(value)] },
  allowedContactsPerKm: {
    name: messages.contactsAllowed,
    words: (value) => [{ kind: "contactRate", value }],
  },
  accelerationCapG: {
    name: messages.greatestAcceleration,
    words: (value) => [{ kind: "acceleration", value }],
  },
  events: { name: messages.obstaclesAndLandings, words: eventsWords },
  reserveMm: { name: messages.reserveWanted, words: (value) => [length(value)] },
  balanceMm: { name: messages.differenceOfSidesAllowed, words: (value) => [length(value)] },
  roadKurtosis: { name: messages.kurtosisOfRoad, words: (value) => [`${value}`] },
};

/** One demand of a check that is not this desk's. */
export interface OtherDemand {
  readonly name: RuleName;
  readonly words: Message;
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

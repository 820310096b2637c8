import type { Corner, Fitment, LimitKind, Reading } from "../fitment.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import type { ContactPart, FullTravelReadingName } from "../readings/fullTravelReadings.ts";
import { limitKinds } from "../readings/limitReadings.ts";
import type { ReadingId } from "../readings/readingId.ts";
import { checkedMean } from "../uncertainty/checkedMean.ts";
import { measuredGapOf } from "./gap.ts";

interface NamedReading {
  readonly id: ReadingId;
  readonly reading: Reading;
}

/** What was found by hand on one side and goes before what is computed. */
export interface HandContacts {
  /** Height from hub to arch at ride, which every contact's height is taken off; null: travels were read. */
  readonly atRide: NamedReading | null;
  readonly stop: NamedReading | null;
  readonly block: (NamedReading & { readonly height: NamedReading }) | null;
  /** Hard contacts: each goes before that kind's limits, or is added. */
  readonly limits: readonly (NamedReading & { readonly kind: LimitKind })[];
}

/** A contact within so little travel or closing says nothing of how the wheel moves, mm. */
const leastTravel = 5;
/** Two contacts so near each other, mm of closing, say nothing of what lies between them. */
const leastApart = 1;

/**
 * The contacts of a side's hand check that can be used, judged at their means: with at least 5 mm of
 * travel, and for stop and block of closing; with one wheel raised, nothing of a beam axle. Of a stop
 * and a block met at the same closing the block counts. Null where none can be used.
 */
export function handContactsOf(fitment: Fitment, corner: Corner): HandContacts | null {
  const { fullTravel: check, layout } = fitment;
  const own = check?.corners.find(({ side }) => side === corner.side);
  if (check === undefined || own === undefined) return null;
  if (layoutRegistry[layout.kind].joinsWheels && check.movement === "one") return null;
  const heights = check.measure === "hubToArch";
  const way = heights ? "heightToArch" : "wheelTravel";
  const named = (
    name: ContactPart | "atRide",
    reading: Reading,
    what: FullTravelReadingName = way,
  ): NamedReading => ({
    id: `fullTravel.${corner.side}.${name}.${what}`,
    reading,
  });
  if (heights && own.atRide === undefined) return null;
  const atRide = heights && own.atRide !== undefined ? named("atRide", own.atRide) : null;
  const rideHeight = atRide === null ? 0 : meanIn(atRide);
  const travels = (contact: NamedReading): boolean => {
    const mean = meanIn(contact);
    return (atRide === null ? mean : rideHeight - mean) >= leastTravel;
  };
  const contact = (name: ContactPart, reading: Reading | undefined): NamedReading | null => {
    const found = reading === undefined ? null : named(name, reading);
    return found !== null && travels(found) ? found : null;
  };
  const measured = measuredGapOf(fitment, corner);
  const closing = measured.ok ? measured.value : Number.NaN;
  const stop = closing >= leastTravel ? contact("stop", own.contacts.stop) : null;
  const block = contact("block", own.block?.reading);
  const height =
    own.block === undefined ? null : named("block", own.block.blockHeight, "blockHeight");
  const recordedHeight = meanIn({
    id: "stop.freeHeight",
    reading: (fitment.recordedStop ?? fitment.stop).freeHeight,
  });
  const blockClosing = height === null ? Number.NaN : closing + recordedHeight - meanIn(height);
  const usedBlock =
    block !== null && height !== null && blockClosing >= leastTravel ? { ...block, height } : null;
  const limits = limitKinds.flatMap((kind) => {
    const found = contact(kind, own.contacts[kind]);
    return found === null ? [] : [{ ...found, kind }];
  });
  const bothAtOnce = usedBlock !== null && Math.abs(blockClosing - closing) < leastApart;
  const usedStop = bothAtOnce ? null : stop;
  return usedStop === null && usedBlock === null && limits.length === 0
    ? null
    : { atRide, stop: usedStop, block: usedBlock, limits };
}

/** NaN where the reading cannot be computed with. */
function meanIn({ id, reading }: NamedReading): number {
  const mean = checkedMean(reading, id, "gap");
  return mean.ok ? mean.value : Number.NaN;
}

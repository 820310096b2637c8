import { length } from "../../physics/sentence.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/filling.ts";
import type { Say } from "../../words/message.ts";
import type { CheckStop } from "../check/checkRecord.ts";
import type { StoredCheck } from "../check/storedCheck.ts";
import type { LengthUnit } from "../entry/units.ts";
import { type Pack, type PackStop, recordStop } from "../pack/pack.ts";
import { type SimilarStop, similarStops } from "../pack/similarStops.ts";
import { chooseStop } from "./changes.ts";
import { withChoice } from "./choice.ts";

/** How well the forces of a stop are known from another one's. Common practice, no source. */
const similarForceShare = 0.4;

/** The tested stop of the pack that is nearest, of the same duty, with how much taller it is; null: none. */
export function similarStop(
  pack: Pack,
  own: Partial<CheckStop>,
): (SimilarStop & { readonly tallerMm: number }) | null {
  const tested = { ...pack, stops: pack.stops.filter(({ estimated }) => estimated === undefined) };
  const [nearest] = similarStops(tested, own, 1);
  return nearest && nearest.tallerMm !== null ? { ...nearest, tallerMm: nearest.tallerMm } : null;
}

/**
 * The check's own stop with curve and usable compression in proportion to a similar one's, so that its
 * stiffness class stays, marked as an estimate. What was measured of it stays; of damping nothing is known.
 */
export function withSimilarStop(
  stored: StoredCheck,
  { stop: similar, tallerMm }: { readonly stop: PackStop; readonly tallerMm: number },
  unit: LengthUnit,
  say: Say,
): StoredCheck {
  const own = stored.record.stop ?? {};
  const { freeHeight } = own;
  if (freeHeight === undefined) return stored;
  const growth = mean(freeHeight.values) / mean(similar.freeHeight.values);
  const far =
    tallerMm === 0
      ? messages.ofSameHeight
      : messages.taller({
          height: length(Math.abs(tallerMm)),
          hasTallerMm: tallerMm > 0,
        });
  const {
    name: _,
    restLoss: _loss,
    staticShare: _share,
    branches: _branches,
    testDoubt: _doubt,
    ...plain
  } = recordStop(similar);
  const stop: Partial<CheckStop> = {
    ...plain,
    ...(own.name !== undefined && { name: own.name }),
    duty: own.duty ?? similar.duty,
    freeHeight,
    usableCompressionMm: own.usableCompressionMm ?? growth * similar.usableCompressionMm,
    curve: similar.curve.map(([depth, force]) => [growth * depth, growth * force] as const),
    damping: null,
    testedAtSpeed: false,
    estimated: {
      how: say(messages.noTestSheetAs({ name: similar.name, far })),
      forceShare: similarForceShare,
    },
  };
  return withChoice(chooseStop(stored, stop, unit), "stop.source", "hand");
}

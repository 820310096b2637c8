import type { CornerAssessment, EventResult } from "../../../physics/fitment.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/afterHit.ts";

/** One thing that follows a hit: with this stop, and with the same one undamped. */
export interface AfterHitRow {
  readonly name: string;
  readonly own: number;
  readonly undamped: number;
  readonly ownText: string;
  readonly undampedText: string;
}

export interface AfterHit {
  /** Place of the event among those of the use: the one that puts most energy into the stop. */
  readonly eventIndex: number;
  readonly sentence: string;
  readonly rows: readonly AfterHitRow[];
}

/** What follows the hardest hit, beside the same stop undamped; null where no test at speed says so. */
export function afterHit(
  { events, undampedEvents }: Pick<CornerAssessment, "events" | "undampedEvents">,
  unit: LengthUnit,
): AfterHit | null {
  if (events === null || undampedEvents === null) return null;
  const most = Math.max(...events.map(({ energyInJ }) => energyInJ));
  const eventIndex = events.findIndex(({ energyInJ }) => energyInJ === most);
  const own = events[eventIndex];
  const undamped = undampedEvents[eventIndex];
  if (own === undefined || undamped === undefined || !(own.energyInJ > 0)) return null;
  const text = (kind: "length" | "speed" | "share", value: number) =>
    quantityText({ kind, value }, unit, { coarse: true });
  const row = (
    name: string,
    of: (event: EventResult) => number,
    told: (value: number) => string,
  ) => ({
    name,
    own: of(own),
    undamped: of(undamped),
    ownText: told(of(own)),
    undampedText: told(of(undamped)),
  });
  const rows = [
    row(
      messages.leavesStopAt,
      (event) => event.leaveSpeedMmPerS,
      (value) => text("speed", value),
    ),
    row(
      messages.tireOffGround,
      (event) => event.tyreOffMs,
      (value) => `${value.toFixed(0)} ms`,
    ),
    row(
      messages.bodyRises,
      (event) => event.bodyRiseMm,
      (value) => text("length", value),
    ),
    row(messages.energyTakenUpBy, kept, (value) => text("share", value)),
  ];
  const [, , rise] = rows;
  return {
    eventIndex,
    rows,
    sentence: messages.itKeepsOfWhat({
      text: text("share", kept(own)),
      ownText: rise?.ownText ?? "",
      undampedText: rise?.undampedText ?? "",
    }),
  };
}

/** Share of the energy put into the stop that does not come back. */
function kept({ energyInJ, energyOutJ }: EventResult): number {
  return energyInJ > 0 ? Math.min(1, Math.max(0, 1 - energyOutJ / energyInJ)) : 0;
}

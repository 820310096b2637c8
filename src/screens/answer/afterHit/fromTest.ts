import type { CornerAssessment, EventTestDoubt } from "../../../physics/fitment.ts";
import type { QuantityKind } from "../../../physics/sentence.ts";
import { fasterThanTested } from "../../../physics/stop/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/afterHit.ts";

/** What the stop's test leaves open of one event. */
export interface EventFromTest {
  readonly eventIndex: number;
  readonly rows: readonly { readonly name: string; readonly value: string; readonly off: string }[];
  /** Said where the event is faster than the test; null where it is not. */
  readonly faster: string | null;
}

const figures: readonly (readonly [
  name: string,
  kind: QuantityKind,
  figure: keyof Omit<EventTestDoubt, "timesTested">,
])[] = [
  [messages.stopPressedBy, "length", "peakCompressionMm"],
  [messages.stopForce, "force", "peakStopForceN"],
  [messages.bodyAcceleration, "acceleration", "peakAccelerationG"],
  [messages.leavesStopAt, "speed", "leaveSpeedMmPerS"],
  [messages.energyBackOut, "energy", "energyOutJ"],
  [messages.bodyRises, "length", "bodyRiseMm"],
];

/** The events that reach the stop, each figure with its ± from the test; null where none is known. */
export function eventsFromTest(
  { events, fromTest }: Pick<CornerAssessment, "events" | "fromTest">,
  unit: LengthUnit,
): readonly EventFromTest[] | null {
  if (events === null || fromTest === null) return null;
  const text = (kind: QuantityKind, value: number) =>
    quantityText({ kind, value }, unit, { coarse: true });
  return events.flatMap((event, eventIndex) => {
    const doubt = fromTest.events[eventIndex];
    if (doubt === undefined || !(event.peakStopForceN > 0)) return [];
    const { timesTested } = doubt;
    return [
      {
        eventIndex,
        rows: figures.map(([name, kind, figure]) => ({
          name,
          value: text(kind, event[figure]),
          off: `± ${doubtText(kind, doubt[figure], unit)}`,
        })),
        faster:
          timesTested !== null && timesTested > fasterThanTested
            ? messages.itClosesStopAt({
                text: text("speed", event.closingSpeedMmPerS),
                number: Number(timesTested.toPrecision(2)),
              })
            : null,
      },
    ];
  });
}

/** A ± finer than its figure; one too small for them is told to be under the least of them. */
function doubtText(kind: QuantityKind, value: number, unit: LengthUnit): string {
  const text = quantityText({ kind, value }, unit);
  if (!(value > 0) || /[1-9]/.test(text)) return text;
  let least = value;
  while (quantityText({ kind, value: least }, unit) === text) least *= 1.1;
  return messages.under({ least: quantityText({ kind, value: least }, unit) });
}

/** How many of the laws that the test allows fail an event; null where all pass, or none is known. */
export function failsByTest({ fromTest }: Pick<CornerAssessment, "fromTest">): string | null {
  if (fromTest === null || fromTest.passShare >= 1) return null;
  const percent = Math.max(1, Math.round(100 * (1 - fromTest.passShare)));
  return percent === 100 ? messages.withAllThatIts : messages.withOfWhatIts({ percent });
}

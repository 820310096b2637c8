import type { UseRules } from "../../../physics/fitment.ts";
import type { MapCell } from "../../../physics/stiffness/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/answer/map.ts";
import { eventWords } from "../../assessment/eventWords.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import { lengthText } from "../ladder/ladderWords.ts";
import { cellState, failureOrder, failureWords } from "./cellWords.ts";

/** What is known of the cell picked on the map. */
export function CellFigures({
  cell,
  rules,
  unit,
}: {
  cell: MapCell | undefined;
  rules: UseRules;
  unit: LengthUnit;
}) {
  if (!cell) return <p class="cell-figures soft">{messages.notWorkedOutYet}</p>;
  const state = cellState(cell);
  const failing = failureOrder.filter((failure) => cell.failures.includes(failure));
  return (
    <div class="cell-figures" role="status">
      <p class="check-state">
        <StateMark state={state} size={22} label="" />
        <strong class={`tone-${state}`}>
          {state === "ok"
            ? messages.fits
            : `${state === "no" ? messages.doesntFit : messages.fitsWithWarning}: ${failing.map((failure) => failureWords[failure]).join(", ")}`}
        </strong>
      </p>
      <dl class="cell-list">
        {cell.contactMm !== null && (
          <Figure name={messages.contact} value={lengthText(cell.contactMm, unit)} />
        )}
        {cell.restTravelMm !== null && (
          <Figure name={messages.standsLoadedAt} value={lengthText(cell.restTravelMm, unit)} />
        )}
        {cell.fullStopMm !== null && (
          <Figure name={messages.fullyCompressed} value={lengthText(cell.fullStopMm, unit)} />
        )}
        {cell.reserveMm !== null && (
          <Figure name={messages.reserve} value={lengthText(cell.reserveMm, unit)} />
        )}
        {cell.events.map((event, index) => {
          const rule = rules.events[index];
          if (!event || !rule) return null;
          return (
            <Figure
              key={eventWords(rule, unit)}
              name={eventWords(rule, unit)}
              value={messages.pressed({
                compression: quantityText({ kind: "length", value: event.peakCompressionMm }, unit),
                force: quantityText({ kind: "force", value: event.peakStopForceN }, unit),
                acceleration: quantityText(
                  { kind: "acceleration", value: event.peakAccelerationG },
                  unit,
                ),
              })}
            />
          );
        })}
      </dl>
    </div>
  );
}

function Figure({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}

import { sideOf } from "../../../physics/readings/index.ts";
import {
  chooseSettledHeight,
  isHeightSettled,
  settledId,
  withSettledHeight,
} from "../../../records/filling/settledHeight.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { Known } from "../../guide/Known.tsx";
import type { StepProps } from "../../guide/stepProps.ts";
import { Segmented } from "../../parts/Choices.tsx";
import { NumberEntry } from "../NumberEntry.tsx";

const readings = [
  {
    from: "lifted",
    label: messages.afterLifting,
    how: messages.liftBumperAbout1,
  },
  {
    from: "pushed",
    label: messages.afterPushingDown,
    how: messages.pushBumperDownAbout,
  },
] as const;

/** Is this the step of a ride height? */
export function isRideHeightStep(id: string): boolean {
  return id === "left.rideHeight" || id === "right.rideHeight";
}

/** The ride height as service manuals take it: from above and from below, the mean counts. */
export function SettledHeight({ stored, change, preferences, step }: StepProps) {
  const side = sideOf(step.id) ?? "left";
  if (!isHeightSettled(stored, side)) return null;
  const settleMm = stored.record.corners.find((corner) => corner.side === side)?.settleMm;
  return (
    <div class="stack">
      {readings.map(({ from, label, how }) => (
        <NumberEntry
          key={from}
          id={settledId(side, from)}
          stored={stored}
          change={change}
          preferences={preferences}
          label={label}
          hint={how}
          kind="length"
          allowed="aboveZero"
          unitChoice
          after={(changed) => withSettledHeight(changed, side)}
        />
      ))}
      {settleMm !== undefined && (
        <p class="small" role="status">
          {messages.averageCountsFrictionHolds({
            settleMm: quantityText({ kind: "length", value: settleMm }, preferences.length),
          })}
        </p>
      )}
    </div>
  );
}

/** Whether it is read as it stands, or twice. */
export function SettledChoice({
  stored,
  change,
  step,
}: Pick<StepProps, "stored" | "change" | "step">) {
  const side = sideOf(step.id) ?? "left";
  const settled = isHeightSettled(stored, side);
  return (
    <Known summary={settled ? messages.readTwiceLiftedThen : messages.readOnceAsIt}>
      <Segmented
        legend={messages.howOftenIsIt}
        value={settled ? "settled" : "once"}
        onChange={(way) =>
          change((current) => chooseSettledHeight(current, side, way === "settled"))
        }
        options={[
          { value: "once", name: messages.onceAsItStands },
          { value: "settled", name: messages.liftedThenPushed },
        ]}
      />
    </Known>
  );
}

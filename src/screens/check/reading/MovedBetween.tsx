import { limitOf, sideOf } from "../../../physics/readings/index.ts";
import { chooseMoved, type Moved, movedBetween } from "../../../records/filling/movedBetween.ts";
import { standOf, standReading } from "../../../records/filling/stand.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { Known } from "../../guide/Known.tsx";
import type { StepProps } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Segmented } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";

/** Beside a clearance: gap and clearance go together only as long as the vehicle has not been moved. */
export function MovedBetween({
  stored,
  change,
  preferences,
  step,
  go,
}: Pick<StepProps, "stored" | "change" | "preferences" | "step" | "go">) {
  const side = sideOf(step.id) ?? "left";
  const moved = movedBetween(stored, side);
  const friction = stored.record.corners.find((corner) => corner.side === side)?.settleMm;
  const gap = standReading(side, standOf(stored, side));
  const question = (
    <Segmented<Moved>
      legend={messages.movedOrBouncedSince}
      value={moved}
      onChange={(value) => change((current) => chooseMoved(current, side, value))}
      options={[
        { value: "no", name: messages.no },
        { value: "yes", name: messages.yes },
      ]}
    />
  );
  // Asked openly at the side's first clearance; at the next ones it is one line for who knows it.
  const asked = limitOf(step.id)?.index === 0 || moved === "yes";
  return (
    <>
      {asked ? question : <Known summary={messages.notMovedSinceGap}>{question}</Known>}
      {moved === "yes" && (
        <Notice tone="care" live>
          <p>
            {friction === undefined
              ? messages.itMayNotStand
              : messages.frictionMayHoldIt({
                  friction: quantityText({ kind: "length", value: friction }, preferences.length),
                })}
          </p>
          <div class="row">
            <Button onClick={() => go(gap)}>{messages.readGapAgain}</Button>
          </div>
        </Notice>
      )}
    </>
  );
}

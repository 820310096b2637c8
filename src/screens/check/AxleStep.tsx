import { changeRecord } from "../../records/check/storedCheck.ts";
import { chosenSides, withSides } from "../../records/filling/sides.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices, Segmented } from "../parts/Choices.tsx";

export function AxleStep({ stored, change }: StepProps) {
  return (
    <>
      <Segmented
        legend={messages.axle}
        value={stored.record.axle ?? null}
        onChange={(axle) =>
          change((current) => {
            // Both sides are the usual case: who measures one says so below.
            const sided =
              current.record.corners.length === 0 ? withSides(current, "both") : current;
            return changeRecord(sided, (record) => ({ ...record, axle }));
          })
        }
        options={[
          { value: "front", name: messages.front },
          { value: "rear", name: messages.rear },
        ]}
      />
      <Choices
        legend={messages.sidesToMeasure}
        value={chosenSides(stored)}
        onChange={(sides) => change((current) => withSides(current, sides))}
        options={[
          {
            value: "both",
            name: messages.leftAndRight,
            hint: messages.bestTiredSpringOr,
          },
          { value: "left", name: messages.leftOnly, hint: messages.leftAsSeenBy },
          { value: "right", name: messages.rightOnly, hint: messages.rightAsSeenBy },
        ]}
      />
    </>
  );
}

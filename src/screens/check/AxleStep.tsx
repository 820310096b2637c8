import { changeRecord } from "../../records/check/storedCheck.ts";
import { chosenSides, withSides } from "../../records/filling/sides.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices, Segmented } from "../parts/Choices.tsx";

export function AxleStep({ stored, change }: StepProps) {
  return (
    <>
      <Segmented
        legend="Axle"
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
          { value: "front", name: "Front" },
          { value: "rear", name: "Rear" },
        ]}
      />
      <Choices
        legend="Sides to measure"
        value={chosenSides(stored)}
        onChange={(sides) => change((current) => withSides(current, sides))}
        options={[
          {
            value: "both",
            name: "Left and right",
            hint: "Best: a tired spring or a bent bracket shows up as a difference.",
          },
          { value: "left", name: "Left only", hint: "Left as seen by the driver." },
          { value: "right", name: "Right only", hint: "Right as seen by the driver." },
        ]}
      />
    </>
  );
}

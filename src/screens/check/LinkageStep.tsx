import { wantsLinkage } from "../../records/filling/askedGeometry.ts";
import { withChoice } from "../../records/filling/choice.ts";
import { wheelTravelMargins } from "../../records/filling/linkageGain.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { filled } from "../filled.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { Choices } from "../parts/Choices.tsx";

/** Whether the other arm is measured as well, with what that would gain on this vehicle. */
export function LinkageStep({ stored, change, preferences }: StepProps) {
  const { closer } = layoutsOnScreen[stored.record.layout?.kind ?? "arm"].words;
  if (closer === null) return null;
  const wants = wantsLinkage(stored);
  const margins = wheelTravelMargins(stored, preferences.length);
  const text = (value: number) => quantityText({ kind: "length", value }, preferences.length);
  return (
    <>
      <p class="known-lead">{closer.lead}</p>
      <p>
        {filled(messages.atOfWheelTravel, {
          travelMm: text(margins.travelMm),
          strong: (
            <strong>
              ±{"\u00a0"}
              {text(margins.withoutMm)}
            </strong>
          ),
          strong2: (
            <strong>
              ±{"\u00a0"}
              {text(margins.withMm)}
            </strong>
          ),
        })}
      </p>
      <Choices
        legend={closer.legend}
        value={wants === null ? null : wants ? "yes" : "no"}
        onChange={(chosen) => change((current) => withChoice(current, "linkage", chosen))}
        options={[
          {
            value: "yes",
            name: messages.yesCloser,
            hint: messages.angleAndLengthOf,
          },
          { value: "no", name: messages.noThisWillDo, hint: messages.youCanDoIt },
        ]}
      />
    </>
  );
}

import type { LayoutKind } from "../../physics/fitment.ts";
import { chooseLayout } from "../../records/filling/changes.ts";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";

const layouts: readonly { value: LayoutKind; name: string; hint: string }[] = [
  {
    value: "arm",
    name: "On an arm",
    hint: "The stop meets a control arm or trailing arm that swings about a pivot.",
  },
  {
    value: "damper",
    name: "On a damper's rod",
    hint: "The stop sits on the rod of a damper that stands on an arm.",
  },
  {
    value: "strut",
    name: "On a strut",
    hint: "The strut carries the wheel; the stop sits on its rod.",
  },
  {
    value: "axle",
    name: "On a beam axle",
    hint: "One axle joins both wheels; the stops sit between axle and frame.",
  },
];

export function LayoutStep({ stored, change }: StepProps) {
  return (
    <div class="layout-choices">
      <Choices
        legend="Look at the vehicle and tap the drawing that is like it"
        value={stored.record.layout?.kind ?? null}
        onChange={(kind) => change((current) => chooseLayout(current, kind))}
        options={layouts.map((layout) => ({
          ...layout,
          picture: (
            <span class="layout-picture" aria-hidden="true">
              <LayoutPicture kind={layout.value} />
            </span>
          ),
        }))}
      />
    </div>
  );
}

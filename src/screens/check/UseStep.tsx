import type { Use } from "../../physics/fitment.ts";
import { withUse } from "../../records/filling/rules.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";
import { referencePack } from "../referencePack.ts";
import { WhoMeasures } from "./WhoMeasures.tsx";

export const uses: readonly { value: Use; name: string; hint: string }[] = [
  { value: "daily", name: "Daily driving", hint: "Paved roads, the odd speed bump." },
  {
    value: "towing",
    name: "Towing or full load",
    hint: "Paved roads, faster, with weight behind.",
  },
  { value: "offroad", name: "Off-road", hint: "Tracks, ruts and landings." },
];

export function UseStep({ stored, change, next }: StepProps) {
  return (
    <>
      <Choices
        legend="Toughest regular use"
        options={uses}
        value={stored.record.vehicle?.use ?? null}
        onChange={(use) => change((current) => withUse(current, use, referencePack()))}
      />
      <p class="small soft">
        The use sets the roads, obstacles and landings that the stop is judged by. You can see and
        change them under Requirements.
      </p>
      <WhoMeasures stored={stored} change={change} next={next} />
    </>
  );
}

import type { Use } from "../../physics/fitment.ts";
import { withUse } from "../../records/filling/rules.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";
import { referencePack } from "../referencePack.ts";

export const uses: readonly { value: Use; name: string; hint: string }[] = [
  { value: "daily", name: "Daily driving", hint: "Paved roads, the odd speed bump." },
  {
    value: "towing",
    name: "Towing or full load",
    hint: "Paved roads, faster, with weight behind.",
  },
  { value: "offroad", name: "Off-road", hint: "Tracks, ruts and landings." },
];

/** The use sets the roads, obstacles and landings that a stop is judged by. */
export function UseChoice({ stored, change }: Pick<StepProps, "stored" | "change">) {
  return (
    <Choices
      legend="Toughest regular use"
      options={uses}
      value={stored.record.vehicle?.use ?? null}
      onChange={(use) => change((current) => withUse(current, use, referencePack()))}
    />
  );
}

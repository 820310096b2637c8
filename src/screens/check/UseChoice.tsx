import type { Use } from "../../physics/fitment.ts";
import { withUse } from "../../records/filling/rules.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";
import { referencePack } from "../referencePack.ts";

export const uses: readonly { value: Use; name: string; hint: string }[] = [
  { value: "daily", name: messages.dailyDriving2, hint: messages.pavedRoadsOddSpeed },
  {
    value: "towing",
    name: messages.towingOrFullLoad,
    hint: messages.pavedRoadsFasterWith,
  },
  { value: "offroad", name: messages.offRoad, hint: messages.tracksRutsAndLandings },
];

/** The use sets the roads, obstacles and landings that a stop is judged by. */
export function UseChoice({ stored, change }: Pick<StepProps, "stored" | "change">) {
  return (
    <Choices
      legend={messages.toughestRegularUse}
      options={uses}
      value={stored.record.vehicle?.use ?? null}
      onChange={(use) => change((current) => withUse(current, use, referencePack()))}
    />
  );
}

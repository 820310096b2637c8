import type { ComponentChildren } from "preact";
import type { RideQuantity } from "../../../physics/fitment.ts";
import { packRide } from "../../../records/filling/platforms.ts";
import {
  type RideWay,
  rideWay,
  type WayQuantity,
  withRideWay,
} from "../../../records/filling/rideWays.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices, type Option } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { referencePack } from "../../referencePack.ts";
import { useRevealed } from "../revealed.ts";
import { EstimateLine } from "./EstimateLine.tsx";

export const packOption: Option<"pack"> = {
  value: "pack",
  name: messages.fromPartsLibrary,
  hint: messages.whatIsUsualFor,
};

const leads: { readonly [Name in RideQuantity]?: string } = {
  damperBumpNsPerMm: messages.inBump,
  damperReboundNsPerMm: messages.inRebound,
};

/** How a quantity is come by, what that way needs, and what stays unsaid where it is not known. */
export function RideWays({
  stored,
  change,
  preferences,
  names,
  legend,
  legendUnseen = false,
  options,
  unsaid,
  children,
}: Pick<StepProps, "stored" | "change" | "preferences"> & {
  /** The first carries the choice. */
  names: readonly [WayQuantity, ...RideQuantity[]];
  legend: ComponentChildren;
  /** The screen's heading says the same. */
  legendUnseen?: boolean;
  options: readonly Option<RideWay>[];
  unsaid: ComponentChildren;
  children: (way: RideWay | null) => ComponentChildren;
}) {
  const way = rideWay(stored, names[0]);
  const opened = useRevealed(way);
  const inPack = names.every((name) => packRide(stored, name, referencePack()) !== null);
  return (
    <>
      <Choices<RideWay>
        legend={legend}
        legendUnseen={legendUnseen}
        value={way}
        onChange={(chosenWay) => change((current) => withRideWay(current, names, chosenWay))}
        options={[
          ...(inPack ? [packOption] : []),
          ...options,
          { value: "unknown", name: messages.notKnown },
        ]}
      />
      <div ref={opened} class="stack">
        {children(way)}
        {way === "pack" &&
          names.map((name) => (
            <EstimateLine
              key={name}
              stored={stored}
              name={name}
              preferences={preferences}
              lead={leads[name] ?? ""}
            />
          ))}
        {way === "unknown" && (
          <Notice tone="unsure" live>
            <p>{unsaid}</p>
          </Notice>
        )}
      </div>
    </>
  );
}

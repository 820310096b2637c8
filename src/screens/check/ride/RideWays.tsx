import type { ComponentChildren } from "preact";
import type { RideQuantity } from "../../../physics/fitment.ts";
import { Choices, type Option } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import type { StepProps } from "../stepProps.ts";
import { rideWay, withRideWay } from "./ways.ts";

/** How a quantity is come by, what that way needs, and what stays unsaid where it is not known. */
export function RideWays({
  stored,
  change,
  names,
  legend,
  options,
  unsaid,
  children,
}: Pick<StepProps, "stored" | "change"> & {
  /** The first carries the choice. */
  names: readonly [RideQuantity, ...RideQuantity[]];
  legend: ComponentChildren;
  options: readonly Option<string>[];
  unsaid: ComponentChildren;
  children: (way: string | null) => ComponentChildren;
}) {
  const way = rideWay(stored, names[0]);
  return (
    <>
      <Choices
        legend={legend}
        value={way}
        onChange={(chosenWay) => change((current) => withRideWay(current, names, chosenWay))}
        options={[...options, { value: "unknown", name: "Not known" }]}
      />
      {children(way)}
      {way === "unknown" && (
        <Notice tone="unsure" live>
          <p>{unsaid}</p>
        </Notice>
      )}
    </>
  );
}

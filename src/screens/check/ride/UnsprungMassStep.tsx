import { hasBeamAxle } from "../../../records/filling/layoutChoices.ts";
import { unsprungShares } from "../../../records/filling/usualValues.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";

export function UnsprungMassStep({ stored, change, preferences }: StepProps) {
  const axle = hasBeamAxle(stored);
  const share = unsprungShares[axle ? "axle" : "independent"];
  return (
    <>
      <p class="known-lead">
        What moves up and down with the wheel: tire, wheel, brake, hub and half of the arms or axle.
      </p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["unsprungMassKg"]}
        legend="Unsprung mass at one wheel"
        options={[
          {
            value: "share",
            name: "Use a typical value",
            hint: `${Math.round(100 * share.value)} ± ${Math.round(100 * share.tol)} % of the weight on the wheel, ${axle ? "beam axle" : "independent wheels"}. Common practice.`,
          },
          { value: "typed", name: "I know it" },
        ]}
        unsaid="Impacts then can't be worked out: no peak force, no stiffness that works."
      >
        {(way) => (
          <>
            {way === "share" && (
              <EstimateLine stored={stored} name="unsprungMassKg" preferences={preferences} />
            )}
            {way === "typed" && (
              <RideTyped
                stored={stored}
                change={change}
                preferences={preferences}
                name="unsprungMassKg"
                label="Unsprung mass"
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

import { hasBeamAxle } from "../../../records/filling/layoutChoices.ts";
import { unsprungShares } from "../../../records/filling/usualValues.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";

export function UnsprungMassStep({ stored, change, preferences }: StepProps) {
  const axle = hasBeamAxle(stored);
  const share = unsprungShares[axle ? "axle" : "independent"];
  return (
    <>
      <p class="known-lead">{messages.whatMovesUpAnd}</p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["unsprungMassKg"]}
        legend={messages.unsprungMassAtOne}
        options={[
          {
            value: "share",
            name: messages.useTypicalValue,
            hint: messages.ofWeightOnWheel({
              share: Math.round(100 * share.value),
              tol: Math.round(100 * share.tol),
              isAxle: Boolean(axle),
            }),
          },
          { value: "typed", name: messages.iKnowIt },
        ]}
        unsaid={messages.impactsThenCantBe}
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
                label={messages.unsprungMass}
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

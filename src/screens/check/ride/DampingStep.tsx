import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { dampingShares } from "../../../records/filling/usualValues.ts";
import { cornerMass } from "../../../records/filling/withEstimates.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Choices } from "../../parts/Choices.tsx";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";

export function DampingStep({ stored, change, preferences, go }: StepProps) {
  const props = { stored, change, preferences };
  const needsRate = stored.record.ride?.wheelRateNPerMm === undefined;
  const needsMass = cornerMass(stored) === null;
  return (
    <>
      <p class="known-lead">
        Damping force per unit speed, measured at the wheel, in bump and rebound.
      </p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["damperBumpNsPerMm", "damperReboundNsPerMm"]}
        legend="Damping"
        options={[
          {
            value: "share",
            name: "Estimate it by feel",
            hint: "As a share of critical damping. Common practice, with a wide ±.",
          },
          { value: "typed", name: "I know it", hint: "From the shock's test sheet." },
        ]}
        unsaid="Contacts and impacts then can't be worked out."
      >
        {(way) => (
          <>
            {way === "share" && (
              <>
                <Choices
                  legend="How do the shocks feel?"
                  value={chosen(stored, "damping.share")}
                  onChange={(share) =>
                    change((current) => withChoice(current, "damping.share", share))
                  }
                  options={dampingShares.map((share) => ({
                    value: share.id,
                    name: share.words,
                    hint: `${Math.round(100 * share.value)} ± ${Math.round(100 * share.tol)} % of critical, rebound twice bump`,
                  }))}
                />
                <EstimateLine {...props} name="damperBumpNsPerMm" lead="In bump " />
                {(needsRate || needsMass) && (
                  <div class="row">
                    {needsRate && (
                      <Button onClick={() => go("ride.wheelRateNPerMm")}>To the spring rate</Button>
                    )}
                    {needsMass && (
                      <Button
                        onClick={() =>
                          go(`${stored.record.corners[0]?.side ?? "left"}.cornerMassKg`)
                        }
                      >
                        To the weight
                      </Button>
                    )}
                  </div>
                )}
                {!needsRate && !needsMass && (
                  <EstimateLine {...props} name="damperReboundNsPerMm" lead="In rebound " />
                )}
              </>
            )}
            {way === "typed" && (
              <>
                <RideTyped {...props} name="damperBumpNsPerMm" label="In bump" />
                <RideTyped {...props} name="damperReboundNsPerMm" label="In rebound" />
                <p class="small soft">
                  At the wheel: the shock's own figure ÷ its lever ratio squared.
                </p>
              </>
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

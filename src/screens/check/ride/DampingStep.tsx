import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { dampingShares } from "../../../records/filling/usualValues.ts";
import { cornerMass } from "../../../records/filling/withEstimates.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
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
      <p class="known-lead">{messages.dampingForcePerUnit}</p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["damperBumpNsPerMm", "damperReboundNsPerMm"]}
        legend={messages.damping}
        legendUnseen
        options={[
          {
            value: "share",
            name: messages.estimateItByFeel,
            hint: messages.asShareOfCritical,
          },
          { value: "typed", name: messages.iKnowIt, hint: messages.fromShocksTestSheet },
        ]}
        unsaid={messages.contactsAndImpactsThen}
      >
        {(way) => (
          <>
            {way === "share" && (
              <>
                <Choices
                  legend={messages.howDoShocksFeel}
                  value={chosen(stored, "damping.share")}
                  onChange={(share) =>
                    change((current) => withChoice(current, "damping.share", share))
                  }
                  options={dampingShares.map((share) => ({
                    value: share.id,
                    name: said(share.words),
                    hint: messages.ofCriticalReboundTwice({
                      share: Math.round(100 * share.value),
                      tol: Math.round(100 * share.tol),
                    }),
                  }))}
                />
                <EstimateLine {...props} name="damperBumpNsPerMm" lead={messages.inBump} />
                {(needsRate || needsMass) && (
                  <div class="row">
                    {needsRate && (
                      <Button onClick={() => go("ride.wheelRateNPerMm")}>
                        {messages.toSpringRate}
                      </Button>
                    )}
                    {needsMass && (
                      <Button
                        onClick={() =>
                          go(`${stored.record.corners[0]?.side ?? "left"}.cornerMassKg`)
                        }
                      >
                        {messages.toWeight}
                      </Button>
                    )}
                  </div>
                )}
                {!needsRate && !needsMass && (
                  <EstimateLine {...props} name="damperReboundNsPerMm" lead={messages.inRebound} />
                )}
              </>
            )}
            {way === "typed" && (
              <>
                <RideTyped {...props} name="damperBumpNsPerMm" label={messages.inBump2} />
                <RideTyped {...props} name="damperReboundNsPerMm" label={messages.inRebound2} />
                <p class="small soft">{messages.atWheelShocksOwn}</p>
              </>
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

import { capital } from "../../../physics/sentence.ts";
import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { tyreRates } from "../../../records/filling/usualValues.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";

export function TyreRateStep({ stored, change, preferences }: StepProps) {
  return (
    <>
      <p class="known-lead">
        How much load flattens the tire by one millimeter. Seldom printed anywhere.
      </p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["tyreRateNPerMm"]}
        legend="Tire rate"
        options={[
          {
            value: "usual",
            name: "Use a typical value",
            hint: "By the sort of tire. Common practice, with a wide ±.",
          },
          { value: "typed", name: "I know it" },
        ]}
        unsaid="Contacts and impacts then can't be worked out."
      >
        {(way) => (
          <>
            {way === "usual" && (
              <>
                <Choices
                  legend="Sort of tire"
                  value={chosen(stored, "tyre.sort")}
                  onChange={(sort) => change((current) => withChoice(current, "tyre.sort", sort))}
                  options={tyreRates.map((tyre) => ({
                    value: tyre.id,
                    name: capital(tyre.words),
                  }))}
                />
                <EstimateLine stored={stored} name="tyreRateNPerMm" preferences={preferences} />
              </>
            )}
            {way === "typed" && (
              <RideTyped
                stored={stored}
                change={change}
                preferences={preferences}
                name="tyreRateNPerMm"
                label="Tire rate"
                hint="At its driving pressure."
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

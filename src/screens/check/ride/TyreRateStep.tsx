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
      <p>How much load flattens the tyre by one millimetre. Seldom printed anywhere.</p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["tyreRateNPerMm"]}
        legend="Tyre rate"
        options={[
          {
            value: "usual",
            name: "Take a usual value",
            hint: "By the sort of tyre. Common practice, with a wide ±.",
          },
          { value: "typed", name: "I know it" },
        ]}
        unsaid="Then neither the contacts per kilometre nor the impacts can be worked out."
      >
        {(way) => (
          <>
            {way === "usual" && (
              <>
                <Choices
                  legend="Sort of tyre"
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
                label="Tyre rate"
                hint="At the pressure it is used at."
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

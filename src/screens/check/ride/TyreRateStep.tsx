import { capital } from "../../../physics/sentence.ts";
import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { tyreRates } from "../../../records/filling/usualValues.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";

export function TyreRateStep({ stored, change, preferences }: StepProps) {
  return (
    <>
      <p class="known-lead">{messages.loadThatFlattens({ unit: preferences.length })}</p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["tyreRateNPerMm"]}
        legend={messages.tireRate}
        legendUnseen
        options={[
          {
            value: "usual",
            name: messages.useTypicalValue,
            hint: messages.bySortOfTire,
          },
          { value: "typed", name: messages.iKnowIt },
        ]}
        unsaid={messages.contactsAndImpactsThen}
      >
        {(way) => (
          <>
            {way === "usual" && (
              <>
                <Choices
                  legend={messages.sortOfTire}
                  value={chosen(stored, "tyre.sort")}
                  onChange={(sort) => change((current) => withChoice(current, "tyre.sort", sort))}
                  options={tyreRates.map((tyre) => ({
                    value: tyre.id,
                    name: said(capital(tyre.words)),
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
                label={messages.tireRate}
                hint={messages.atItsDrivingPressure}
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

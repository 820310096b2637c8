import { helperInputs } from "../../../records/filling/helperInputs.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

export function WheelRateStep({ stored, change, preferences }: StepProps) {
  const props = { stored, change, preferences };
  return (
    <>
      <p class="known-lead">{messages.loadThatLowers({ unit: preferences.length })}</p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["wheelRateNPerMm"]}
        legend={messages.wheelRate}
        legendUnseen
        options={[
          {
            value: "sag",
            name: messages.fromKnownLoad,
            hint: messages.putWeightOverWheel,
          },
          {
            value: "coil",
            name: messages.fromCoilsDimensions,
            hint: messages.wireDiameterCoilsCoil,
          },
          { value: "typed", name: messages.iKnowIt },
        ]}
        unsaid={messages.answerThenCantSayHow}
      >
        {(way) => (
          <>
            {way === "sag" && (
              <>
                <ol class="numbered small">
                  <li>{messages.measureFromWheelCenter}</li>
                  <li>{messages.putLoadStraightOver}</li>
                  <li>{messages.reMeasureWithLoad}</li>
                </ol>
                <TolerancedEntry
                  {...props}
                  input={helperInputs.sagLoad}
                  label={messages.loadOverThisWheel}
                  usual="3 %"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.sag}
                  label={messages.fenderCameDownBy}
                  usual={{ mm: 2 }}
                />
              </>
            )}
            {way === "coil" && (
              <>
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilWire}
                  label={messages.wireThickness}
                  hint={messages.withoutPaintWithCaliper}
                  usual={{ mm: 0.1 }}
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilOutside}
                  label={messages.outsideDiameterOfCoil}
                  usual={{ mm: 1 }}
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilActive}
                  label={messages.activeCoils}
                  hint={messages.thoseFreeToMove}
                  unitWords="coils"
                  usual="0.25"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilRatio}
                  label={messages.wheelTravelPerSpring}
                  hint={messages.n1OnBeamAxle}
                  unitWords=": 1"
                  usual="3 %"
                />
                <p class="small soft">{messages.kGD8}</p>
              </>
            )}
            {(way === "sag" || way === "coil") && (
              <EstimateLine {...props} name="wheelRateNPerMm" />
            )}
            {way === "typed" && (
              <RideTyped
                {...props}
                name="wheelRateNPerMm"
                label={messages.rateAtWheel}
                hint={messages.wheelRateNotSpring}
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

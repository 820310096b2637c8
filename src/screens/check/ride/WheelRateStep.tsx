import { helperInputs } from "../../../records/filling/helperInputs.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { RideWays } from "./RideWays.tsx";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

export function WheelRateStep({ stored, change, preferences }: StepProps) {
  const props = { stored, change, preferences };
  return (
    <>
      <p class="known-lead">
        How much load brings this corner down by one millimeter, at the wheel, on its spring.
      </p>
      <RideWays
        stored={stored}
        change={change}
        preferences={preferences}
        names={["wheelRateNPerMm"]}
        legend="Wheel rate"
        options={[
          {
            value: "sag",
            name: "From a known load",
            hint: "Put a weight over the wheel and measure how far it comes down. Best without papers.",
          },
          {
            value: "coil",
            name: "From the coil's dimensions",
            hint: "Wire, diameter, coils. Coil springs of round steel wire only.",
          },
          { value: "typed", name: "I know it" },
        ]}
        unsaid="The answer then can't say how often or how hard the loaded wheel reaches the stop, nor which stiffness works. Two people of known weight and a tape are enough."
      >
        {(way) => (
          <>
            {way === "sag" && (
              <>
                <ol class="numbered small">
                  <li>Measure from the wheel center to the fender.</li>
                  <li>Put the load straight over this wheel. Bounce it once to settle.</li>
                  <li>Re-measure with the load on. The stop must not touch yet.</li>
                </ol>
                <TolerancedEntry
                  {...props}
                  input={helperInputs.sagLoad}
                  label="Load over this wheel"
                  usual="3 %"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.sag}
                  label="The fender came down by"
                  usual="2 mm"
                />
              </>
            )}
            {way === "coil" && (
              <>
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilWire}
                  label="Wire thickness"
                  hint="Without paint, with a caliper: it counts four times over."
                  usual="0.1 mm"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilOutside}
                  label="Outside diameter of the coil"
                  usual="1 mm"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilActive}
                  label="Active coils"
                  hint="Those free to move: leave out what lies on the seats."
                  unitWords="coils"
                  usual="0.25"
                />
                <TolerancedEntry
                  {...props}
                  input={helperInputs.coilRatio}
                  label="Wheel travel per spring travel"
                  hint="1 on a beam axle or strut; on an arm, pivot to wheel over pivot to spring."
                  unitWords=": 1"
                  usual="3 %"
                />
                <p class="small soft">
                  k = G·d⁴ / (8·D³·n), Shigley, Mechanical Engineering Design, ch. 10; at the wheel,
                  divided by the lever ratio squared. G = 79.3 ± 2 kN/mm² (spring steel).
                </p>
              </>
            )}
            {(way === "sag" || way === "coil") && (
              <EstimateLine {...props} name="wheelRateNPerMm" />
            )}
            {way === "typed" && (
              <RideTyped
                {...props}
                name="wheelRateNPerMm"
                label="Rate at the wheel"
                hint="Wheel rate, not spring rate: spring rate ÷ lever ratio²."
              />
            )}
          </>
        )}
      </RideWays>
    </>
  );
}

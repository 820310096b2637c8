import { quantityText } from "../../../records/entry/quantityText.ts";
import { entryUnit } from "../../../records/entry/readingCatalogue.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import { chosen, withChoice } from "../../../records/filling/choice.ts";
import { helperInputs } from "../../../records/filling/helperInputs.ts";
import {
  peopleId,
  personKg,
  thingsId,
  withCountedPayload,
} from "../../../records/filling/payloadCounted.ts";
import { packRide } from "../../../records/filling/platforms.ts";
import { rideWay, withRideWay } from "../../../records/filling/rideWays.ts";
import { payloadShares } from "../../../records/filling/usualValues.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { referencePack } from "../../referencePack.ts";
import { NumberEntry } from "../NumberEntry.tsx";
import { EstimateLine } from "./EstimateLine.tsx";
import { RideTyped } from "./RideTyped.tsx";
import { packOption } from "./RideWays.tsx";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

const names = ["payloadPerCornerKg"] as const;
const id = "ride.payloadPerCornerKg";

/** Payload on top of how the vehicle stands now. */
export function PayloadStep({ stored, change, preferences }: StepProps) {
  const way = rideWay(stored, "payloadPerCornerKg");
  const none = way === "typed" && chosen(stored, "payload.none") === "yes";
  const props = { stored, change, preferences };
  const usualLength = preferences.length === "in" ? "3/4" : "20";
  const onEachWheel = (
    <EstimateLine
      stored={stored}
      name="payloadPerCornerKg"
      preferences={preferences}
      lead="On each wheel of this axle: "
    />
  );
  return (
    <>
      <p class="known-lead">
        The most it will carry, on top of what is in it now: people, cargo, trailer weight on the
        hitch.
      </p>
      <Choices
        legend="Payload"
        value={none ? "none" : way}
        onChange={(value) =>
          change((current) => {
            if (value !== "none") {
              return withRideWay(withChoice(current, "payload.none", null), names, value);
            }
            const typed = withRideWay(current, names, "typed");
            return setEntry(withChoice(typed, "payload.none", "yes"), id, {
              texts: ["0"],
              unit: entryUnit("mass", preferences.length),
              tol: "",
            });
          })
        }
        options={[
          ...(packRide(stored, "payloadPerCornerKg", referencePack()) ? [packOption] : []),
          { value: "none", name: "None", hint: "It never carries more than now." },
          {
            value: "total",
            name: "I know the whole load",
            hint: "Shared out to this wheel below.",
          },
          {
            value: "hitch",
            name: "Trailer on the hitch",
            hint: "Its lever puts more than the tongue weight on the rear axle.",
          },
          {
            value: "rating",
            name: "Up to the axle's rating",
            hint: "On the door label: the most it may ever carry.",
          },
          { value: "typed", name: "I know it for one wheel" },
          { value: "unknown", name: "Not known" },
        ]}
      />
      {way === "pack" && (
        <EstimateLine stored={stored} preferences={preferences} name="payloadPerCornerKg" />
      )}
      {way === "total" && (
        <>
          <TolerancedEntry
            {...props}
            input={helperInputs.payloadTotal}
            label="The whole load"
            usual="5 %"
          />
          <Disclosure summary="Add up people and things">
            <NumberEntry
              {...props}
              id={peopleId}
              kind="number"
              allowed="zeroOrMore"
              label="People"
              hint={`Each with luggage: ${quantityText({ kind: "mass", value: personKg }, preferences.length)}.`}
              after={withCountedPayload}
            />
            <NumberEntry
              {...props}
              id={thingsId}
              kind="mass"
              allowed="zeroOrMore"
              label="Things"
              hint="Cargo, tools, trailer weight on the hitch."
              after={withCountedPayload}
            />
          </Disclosure>
          <Choices
            legend="How much of it stands over this axle?"
            value={chosen(stored, "payload.share")}
            onChange={(share) => change((current) => withChoice(current, "payload.share", share))}
            options={payloadShares.map((share) => ({ value: share.id, name: share.words }))}
          />
          {onEachWheel}
        </>
      )}
      {way === "hitch" && (
        <>
          <TolerancedEntry
            {...props}
            input={helperInputs.tongue}
            label="Tongue weight"
            hint="Pressing down on the hitch, not the trailer's own weight."
            usual="10 %"
          />
          <TolerancedEntry
            {...props}
            input={helperInputs.overhang}
            label="Hitch behind the rear axle"
            hint="Middle of the rear wheel to the ball, straight back."
            usual={usualLength}
          />
          <TolerancedEntry
            {...props}
            input={helperInputs.wheelbase}
            label="Wheelbase"
            hint="Middle of the front wheel to middle of the rear wheel."
            usual={usualLength}
          />
          {onEachWheel}
          <Disclosure summary="Why it is more than the tongue weight">
            <p>
              The hitch hangs behind the rear axle, as on a seesaw: it presses the rear down and
              lifts the front. A hitch half a wheelbase behind puts half as much again on the rear
              axle. Cargo behind the axle does the same.
            </p>
          </Disclosure>
        </>
      )}
      {way === "rating" && (
        <>
          <TolerancedEntry
            {...props}
            input={helperInputs.axleRating}
            label="Axle rating"
            hint="GAWR, front or rear, on the label in the driver's door frame."
            usual="0"
          />
          {onEachWheel}
          <Notice tone="info">
            <p>
              This is an upper bound, not what it carries: rating less the weight now, half on each
              wheel. A stop that passes with it passes with less. A stop that fails may still do for
              your real load.
            </p>
          </Notice>
        </>
      )}
      {way === "typed" && !none && (
        <RideTyped {...props} name="payloadPerCornerKg" label="Payload on one wheel of this axle" />
      )}
      {way === "unknown" && (
        <Notice tone="unsure" live>
          <p>
            The answer then says nothing of the loaded vehicle: not its sag, nor how often it
            reaches the stop. The payload on the vehicle's plate is a good start.
          </p>
        </Notice>
      )}
    </>
  );
}

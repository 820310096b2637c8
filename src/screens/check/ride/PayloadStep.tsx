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
import { type RideWay, rideWay, withRideWay } from "../../../records/filling/rideWays.ts";
import { payloadShares } from "../../../records/filling/usualValues.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { referencePack } from "../../referencePack.ts";
import { NumberEntry } from "../NumberEntry.tsx";
import { useRevealed } from "../revealed.ts";
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
  const opened = useRevealed(none ? null : way);
  const onEachWheel = (
    <EstimateLine
      stored={stored}
      name="payloadPerCornerKg"
      preferences={preferences}
      lead={messages.onEachWheelOf}
    />
  );
  return (
    <>
      <p class="known-lead">{messages.mostItWillCarry}</p>
      <Choices<RideWay | "none">
        legend={messages.payload}
        legendUnseen
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
          { value: "none", name: messages.none, hint: messages.itNeverCarriesMore },
          {
            value: "total",
            name: messages.iKnowWholeLoad,
            hint: messages.sharedOutToThis,
          },
          {
            value: "hitch",
            name: messages.trailerOnHitch,
            hint: messages.itsLeverPutsMore,
          },
          {
            value: "rating",
            name: messages.upToAxlesRating,
            hint: messages.onDoorLabelMost,
          },
          { value: "typed", name: messages.iKnowItFor },
          { value: "unknown", name: messages.notKnown },
        ]}
      />
      <div ref={opened} class="stack">
        {way === "pack" && (
          <EstimateLine stored={stored} preferences={preferences} name="payloadPerCornerKg" />
        )}
        {way === "total" && (
          <>
            <TolerancedEntry
              {...props}
              input={helperInputs.payloadTotal}
              label={messages.wholeLoad}
              usual="5 %"
            />
            <Disclosure summary={messages.addUpPeopleAnd}>
              <NumberEntry
                {...props}
                id={peopleId}
                kind="number"
                allowed="zeroOrMore"
                label={messages.people}
                hint={messages.eachWithLuggage({
                  personKg: quantityText({ kind: "mass", value: personKg }, preferences.length),
                })}
                after={withCountedPayload}
              />
              <NumberEntry
                {...props}
                id={thingsId}
                kind="mass"
                allowed="zeroOrMore"
                label={messages.things}
                hint={messages.cargoToolsTrailerWeight}
                after={withCountedPayload}
              />
            </Disclosure>
            <Choices
              legend={messages.howMuchOfIt}
              value={chosen(stored, "payload.share")}
              onChange={(share) => change((current) => withChoice(current, "payload.share", share))}
              options={payloadShares.map((share) => ({ value: share.id, name: said(share.words) }))}
            />
            {onEachWheel}
          </>
        )}
        {way === "hitch" && (
          <>
            <TolerancedEntry
              {...props}
              input={helperInputs.tongue}
              label={messages.tongueWeight}
              hint={messages.pressingDownOnHitch}
              usual="10 %"
            />
            <TolerancedEntry
              {...props}
              input={helperInputs.overhang}
              label={messages.hitchBehindRearAxle}
              hint={messages.middleOfRearWheel}
              usual={{ mm: 20 }}
            />
            <TolerancedEntry
              {...props}
              input={helperInputs.wheelbase}
              label={messages.wheelbase}
              hint={messages.middleOfFrontWheel}
              usual={{ mm: 20 }}
            />
            {onEachWheel}
            <Disclosure summary={messages.whyItIsMore}>
              <p>{messages.hitchHangsBehindRear}</p>
            </Disclosure>
          </>
        )}
        {way === "rating" && (
          <>
            <TolerancedEntry
              {...props}
              input={helperInputs.axleRating}
              label={messages.axleRating}
              hint={messages.gawrFrontOrRear}
              usual="0"
            />
            {onEachWheel}
            <Notice tone="info">
              <p>{messages.thisIsUpperBound}</p>
            </Notice>
          </>
        )}
        {way === "typed" && !none && (
          <RideTyped {...props} name="payloadPerCornerKg" label={messages.payloadOnOneWheel} />
        )}
        {way === "unknown" && (
          <Notice tone="unsure" live>
            <p>{messages.answerThenSaysNothing}</p>
          </Notice>
        )}
      </div>
    </>
  );
}

import { recordBounds } from "../../records/check/recordFormat.ts";
import { changeRecord, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { setEntry } from "../../records/filling/changes.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import { jobOf, withJob } from "../../records/filling/job.ts";
import { unitOf, withUnit } from "../../records/filling/ownUnit.ts";
import { platformChoices, platformSince, withPlatform } from "../../records/filling/platforms.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { PlatformField } from "../choosing/PlatformField.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { raisedChoice } from "../guide/steps.ts";
import { JobFields } from "../job/JobFields.tsx";
import { jobWords } from "../job/jobWords.ts";
import { Button } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { referencePack } from "../referencePack.ts";
import { NumberEntry } from "./NumberEntry.tsx";
import { UseChoice } from "./UseChoice.tsx";
import { WhoMeasures } from "./WhoMeasures.tsx";

const lift = "vehicle.liftMm";
const parkedLift = "vehicle.liftWhenRaised";

/** "No" makes the lift 0; what was typed for "yes" is there again when that is chosen. */
function withRaised(stored: StoredCheck, raised: "yes" | "no", unit: LengthUnit): StoredCheck {
  const typed = stored.entries[lift] ?? { texts: [""], unit, tol: "" };
  const marked = withChoice(stored, "vehicle.raised", raised);
  if (raised === "no") {
    const parked = {
      ...marked,
      entries: { ...marked.entries, [parkedLift]: typed },
    };
    return setEntry(parked, lift, { texts: ["0"], unit: typed.unit, tol: "" });
  }
  return setEntry(marked, lift, stored.entries[parkedLift] ?? { ...typed, texts: [""] });
}

export function VehicleStep({ stored, change, preferences, next }: StepProps) {
  const { vehicle } = stored.record;
  const raised = raisedChoice(stored);
  const platforms = platformChoices(stored, referencePack());
  const since = platformSince(stored, referencePack());
  return (
    <>
      <TextField
        label={messages.vehicle}
        hint={messages.soYouCanFind}
        value={vehicle?.label ?? ""}
        maxLength={recordBounds.labelCharacters}
        capitals
        first={!vehicle?.label}
        onInput={(label) =>
          change((current) => ({
            ...changeRecord(current, (record) => ({
              ...record,
              vehicle: { ...record.vehicle, label },
            })),
            // The list shows the vehicle until the check is given a name of its own.
            name: current.name === (current.record.vehicle?.label ?? "") ? label : current.name,
          }))
        }
        onEnter={next}
      />
      <PlatformField
        label={messages.inPartsLibrary}
        hint={messages.thenYouCanUse}
        none={messages.notInList}
        platforms={platforms}
        value={vehicle?.platformId ?? null}
        onChange={(platform) =>
          change((current) => withPlatform(current, platform, referencePack()))
        }
      />
      {since === "gone" && <p class="small soft">{messages.libraryInUseNo}</p>}
      {since === "changed" && (
        <Notice tone="care">
          <p>{messages.libraryNowHasOther}</p>
          <div class="row">
            <Button
              onClick={() =>
                change((current) =>
                  withPlatform(
                    current,
                    platforms.find(({ id }) => id === vehicle?.platformId) ?? null,
                    referencePack(),
                  ),
                )
              }
            >
              {messages.takeNewValues}
            </Button>
          </div>
        </Notice>
      )}
      <Segmented
        legend={messages.isItRaisedAbove}
        value={raised}
        onChange={(value) => change((current) => withRaised(current, value, preferences.length))}
        options={[
          { value: "no", name: messages.no },
          { value: "yes", name: messages.yesRaised },
        ]}
      />
      {raised === "yes" && (
        <>
          <NumberEntry
            id={lift}
            stored={stored}
            change={change}
            preferences={preferences}
            label={messages.raisedBy}
            hint={messages.bySpringsSpacersOr}
            unitChoice
            enteredAtOnce={chosen(stored, "vehicle.raised") === "yes"}
            onEnter={next}
          />
          <Notice tone="care" live>
            <p>{messages.raisedVehiclesHaveCautions}</p>
          </Notice>
        </>
      )}
      <Disclosure
        summary={stored.record.job ? jobWords(stored.record.job) : messages.jobNumberAndCustomer}
      >
        <JobFields
          job={
            stored.record.job ?? {
              ...jobOf(stored, inModelUnits),
              label: vehicle?.label?.trim() ?? "",
            }
          }
          onChange={(job) => change((current) => withJob(current, job))}
        />
      </Disclosure>
      <Disclosure summary={messages.unitsOfThisCheck}>
        <Segmented
          legend={messages.unitsOfThisCheck}
          legendUnseen
          value={unitOf(stored) ?? "settings"}
          onChange={(unit) =>
            change((current) => withUnit(current, unit === "settings" ? null : unit))
          }
          options={[
            { value: "settings", name: messages.asInSettings },
            { value: "in", name: messages.usUnits },
            { value: "mm", name: messages.metric },
          ]}
        />
        <p class="small soft">{messages.numbersAlreadyTypedKeep}</p>
      </Disclosure>
      {chosen(stored, "vehicle.raised") === null && (vehicle?.liftMm ?? 0) < 0 && (
        <p class="small soft">{messages.thisCheckSaysThat}</p>
      )}
      <UseChoice stored={stored} change={change} />
      <WhoMeasures stored={stored} change={change} next={next} />
    </>
  );
}

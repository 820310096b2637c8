import {
  isProgressive,
  secantRate,
  stiffnessClassOf,
} from "../../../physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../../physics/stop/stopCurve.ts";
import { type CheckStop, recordBounds } from "../../../records/checkRecord.ts";
import { recordStop, stopOf } from "../../../records/pack.ts";
import { stopDifferences } from "../../../records/packSince.ts";
import { quantityText } from "../../../records/quantityText.ts";
import { estimateBand, stopTitle } from "../../../records/stopTitle.ts";
import { changeRecord } from "../../../records/storedCheck.ts";
import type { LengthUnit } from "../../../records/units.ts";
import { Button } from "../../parts/Button.tsx";
import { Choices, Segmented } from "../../parts/Choices.tsx";
import { TextField } from "../../parts/Field.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { referencePack } from "../../referencePack.ts";
import { chosen, withChoice } from "../choice.ts";
import { platformOfCheck } from "../platforms.ts";
import type { StepProps } from "../stepProps.ts";
import { stopSource } from "../steps.ts";
import { packStops } from "./packStops.ts";
import { withPackStop, withStopSource } from "./stopSources.ts";

const dutyWords: { readonly [Duty in CheckStop["duty"]]: string } = {
  impact: "for impacts",
  carry: "made to stay in contact under load",
};

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

/** Height, stiffness by its number, duty: what tells one stop from another. */
export function stopFigures(stop: CheckStop, unit: LengthUnit): string {
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const curve = stopCurve(stop);
  const stiffness = curve.ok
    ? `class ${quantityText({ kind: "rate", value: stiffnessClassOf(secantRate(curve.value)) }, unit)}${isProgressive(curve.value) ? ", progressive" : ""}`
    : "no usable curve";
  return [
    `${length(mean(stop.freeHeight.values))} tall, ${length(stop.usableCompressionMm)} usable`,
    stiffness,
    dutyWords[stop.duty],
    stop.estimated
      ? `an estimate, not tested: ${estimateBand(stop.estimated)}`
      : stop.testedAtSpeed
        ? "tested at speed"
        : "tested slowly only",
  ].join(" · ");
}

export function StopStep({ stored, change, preferences }: StepProps) {
  const source = stopSource(stored);
  const { stop } = stored.record;
  return (
    <>
      <p>The stop that is fitted, or the one that is to be judged.</p>
      {source === "file" && stop && (
        <Notice tone="info">
          <p>
            This check came with its stop: <strong>{stopTitle({ name: "", ...stop })}</strong>. It
            stays unless you choose another.
          </p>
        </Notice>
      )}
      <Choices
        legend="Where are its figures?"
        value={source === "file" ? null : source}
        onChange={(value) => change((current) => withStopSource(current, value))}
        options={[
          {
            value: "pack",
            name: "In the reference pack",
            hint: "Choose it from the list of tested stops.",
          },
          {
            value: "hand",
            name: "I type them",
            hint: "Free height and test sheet at hand: forces at several depths.",
          },
        ]}
      />
      {source === "pack" && <PackList stored={stored} change={change} preferences={preferences} />}
      {source === "hand" && (
        <>
          <TextField
            label="Name of the stop"
            hint="As it is printed on it or on the box."
            value={stop?.name ?? ""}
            maxLength={recordBounds.labelCharacters}
            capitals
            onInput={(name) =>
              change((current) =>
                changeRecord(current, (record) => ({ ...record, stop: { ...record.stop, name } })),
              )
            }
          />
          <Segmented
            legend="Its duty"
            value={stop?.duty ?? null}
            onChange={(duty) =>
              change((current) =>
                changeRecord(current, (record) => ({ ...record, stop: { ...record.stop, duty } })),
              )
            }
            options={[
              { value: "impact", name: "Takes impacts" },
              { value: "carry", name: "Helps carry load" },
            ]}
          />
          <p class="small soft">
            Most stops take impacts and are free when parked. A stop that helps to carry is made to
            stay in contact under load; it is judged differently.
          </p>
        </>
      )}
    </>
  );
}

function PackList({
  stored,
  change,
  preferences,
}: Pick<StepProps, "stored" | "change" | "preferences">) {
  const stops = packStops(stored);
  const usual = platformOfCheck(stored)?.usualStop;
  const unit = preferences.length;
  const chosenId = chosen(stored, "stop.packId");
  const { stop: own } = stored.record;
  const since = own && stopDifferences(own, referencePack());
  const choose = (id: string) => {
    const stop = stopOf(referencePack(), id);
    if (!stop) return;
    change((current) =>
      withChoice(withPackStop(current, recordStop(stop), unit), "stop.packId", id),
    );
  };
  return (
    <>
      {chosenId && since && (
        <Notice tone="care">
          <p>
            The pack has “{own.name}” otherwise than this check: {since.join(", ")}. The check goes
            by what it has.
          </p>
          <div class="row">
            <Button onClick={() => choose(chosenId)}>Take it as the pack has it</Button>
          </div>
        </Notice>
      )}
      <Choices
        legend={`Stops of the reference pack (${stops.length})`}
        value={chosenId}
        onChange={choose}
        options={stops.map((stop) => ({
          value: stop.id,
          name: stop.id === usual ? `${stopTitle(stop)} (usual on this vehicle)` : stopTitle(stop),
          hint: stopFigures(stop, unit),
        }))}
      />
    </>
  );
}

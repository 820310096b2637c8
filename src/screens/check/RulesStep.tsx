import { useEffect, useState } from "preact/hooks";
import type { DesignEvent, RoadClass } from "../../physics/fitment.ts";
import { quantityText } from "../../records/entry/quantityText.ts";
import { entryUnit } from "../../records/entry/readingCatalogue.ts";
import { fromModel } from "../../records/entry/units.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import {
  type EventField,
  eventEntryId,
  hasOwnEvents,
  houseRulesSince,
  isLeftOut,
  rulesInForce,
  usualRules,
  withEventEntries,
  withEvents,
  withHouseNumbers,
  withLeftOut,
  withRoadClass,
  withRoadKurtosis,
  withUsualRules,
} from "../../records/filling/rules.ts";
import { same } from "../../records/pack/packDifferences.ts";
import { eventLengthText, eventWords, speedText } from "../assessment/eventWords.ts";
import { Known } from "../guide/Known.tsx";
import { isPractised } from "../guide/practice.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { SelectField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { referencePack } from "../referencePack.ts";
import { NumberEntry } from "./NumberEntry.tsx";
import { uses } from "./UseChoice.tsx";

const roads: readonly { value: RoadClass; text: string }[] = [
  { value: "A", text: "A: very smooth" },
  { value: "B", text: "B: smooth" },
  { value: "C", text: "C: average, patched" },
  { value: "D", text: "D: rough, unmade" },
  { value: "E", text: "E: very rough" },
];

const eventHeadings = { obstacle: "Obstacle", hump: "Speed bump", landing: "Landing" } as const;
const eventHints = {
  obstacle: "A rounded bump, driven over.",
  hump: "A speed bump, part of a circle, driven over.",
  landing: "A drop onto flat ground, both wheels at once.",
} as const;

const evenness: readonly { value: string; text: string }[] = [
  { value: "5", text: "Rough and smooth by turns (kurtosis 5)" },
  { value: "3", text: "Even all along (kurtosis 3)" },
];

export function RulesStep({ stored, change, preferences }: StepProps) {
  const usual = usualRules(stored);
  const { rules, reference } = stored.record;
  const inForce = rulesInForce(stored);
  const use = uses.find(({ value }) => value === stored.record.vehicle?.use);
  const props = { stored, change, preferences };
  const [practised] = useState(isPractised);
  const inches = preferences.length === "in";

  useEffect(() => {
    change((current) => {
      const known = withEventEntries(current);
      return chosen(known, "rules") === "seen" ? known : withChoice(known, "rules", "seen");
    });
  }, [change]);

  const lengthText = (mm: number) =>
    inches ? quantityText({ kind: "length", value: mm }, "in", { coarse: true }) : `${mm} mm`;
  const usualText = (kind: "roadSpeed" | "contactRate", value: number) => {
    const unit = entryUnit(kind, preferences.length);
    return `${Number(fromModel(value, unit).toPrecision(inches ? 2 : 3))} ${unit}`;
  };
  const number = (
    name: "speedKmPerH" | "allowedContactsPerKm" | "accelerationCapG" | "reserveMm" | "balanceMm",
    label: string,
    usually: string,
    unitWords?: string,
  ) => (
    <NumberEntry
      {...props}
      id={`rules.${name}`}
      label={label}
      hint={inForce[name] === usual[name] ? `Usual: ${usually}` : `Changed. Usual: ${usually}`}
      after={withHouseNumbers}
      placeholder={/^[\d.,]+/.exec(usually)?.[0] ?? ""}
      {...(unitWords && { unitWords })}
    />
  );
  const event = (kind: DesignEvent["kind"], field: EventField, label: string, value: number) => {
    const length = field !== "speedKmPerH";
    const text = length
      ? eventLengthText(value, preferences.length)
      : usualText("roadSpeed", value);
    return (
      <NumberEntry
        {...props}
        id={eventEntryId(kind, field)}
        kind={length ? "length" : "roadSpeed"}
        allowed="aboveZero"
        label={label}
        hint={`Usual: ${text}`}
        placeholder={text.replace(/\s.*/, "")}
        after={withEvents}
      />
    );
  };

  return (
    <>
      <Known summary="Where these come from">
        <Notice tone="info">
          <p>
            These are the typical requirements for{" "}
            <strong>{use?.name.toLowerCase() ?? "daily driving"}</strong>:{" "}
            {reference?.rules
              ? `the requirements in “${reference.pack}”, and common practice where they say nothing. None of it is from a standard.`
              : "common practice, from no standard."}{" "}
            Change what you know better. An empty field means the typical value. Your change stays
            with this check.
          </p>
        </Notice>
      </Known>
      {houseRulesSince(stored, referencePack()) && (
        <Notice tone="care">
          <p>
            The library in use, “{referencePack().name}”, has other requirements for this use than
            this check. “Reset to typical” takes those of the library.
          </p>
        </Notice>
      )}
      {practised && (
        <p>
          Road class {inForce.roadClass} at {speedText(inForce.speedKmPerH, preferences.length)}.{" "}
          {inForce.events.map((each) => `${eventWords(each, preferences.length)}. `)}
          At most {inForce.accelerationCapG} g, reserve {lengthText(inForce.reserveMm)}.
        </p>
      )}
      <Known summary="Change the requirements">
        <div class="stack">
          <Card heading="Road">
            <SelectField
              label="Road class (ISO 8608)"
              hint={
                inForce.roadClass === usual.roadClass
                  ? `Usual: ${usual.roadClass}`
                  : `Changed. Usual: ${usual.roadClass}`
              }
              value={inForce.roadClass}
              options={roads}
              onChange={(value) => change((current) => withRoadClass(current, value as RoadClass))}
            />
            <SelectField
              label="How even the road is"
              hint={
                inForce.roadKurtosis === usual.roadKurtosis
                  ? "Typical. Roads are rough and smooth by turns; how much is common practice."
                  : "Changed from typical."
              }
              value={String(inForce.roadKurtosis)}
              options={evenness}
              onChange={(value) =>
                change((current) => withRoadKurtosis(current, value === "3" ? 3 : 5))
              }
            />
            {number("speedKmPerH", "Speed", usualText("roadSpeed", usual.speedKmPerH))}
            {number(
              "allowedContactsPerKm",
              "Contacts allowed",
              `${usualText("contactRate", usual.allowedContactsPerKm)}; ten times that for a progressive stop`,
            )}
          </Card>
          {hasOwnEvents(stored) ? (
            <Notice tone="care">
              <p>
                This check came with {rules?.events?.length ?? 0} events of its own. They stay as
                they are. “Reset to typical” replaces them.
              </p>
            </Notice>
          ) : (
            usual.events.map((each) => (
              <Card key={each.kind} heading={eventHeadings[each.kind]}>
                <CheckLine
                  checked={!isLeftOut(stored, each.kind)}
                  onChange={(checked) =>
                    change((current) => withLeftOut(current, each.kind, !checked))
                  }
                  hint={eventHints[each.kind]}
                >
                  Include this event
                </CheckLine>
                {!isLeftOut(stored, each.kind) && (
                  <>
                    {event(each.kind, "heightM", "Height", each.heightM)}
                    {each.kind !== "landing" && (
                      <>
                        {event(each.kind, "lengthM", "Length", each.lengthM)}
                        {event(each.kind, "speedKmPerH", "Speed", each.speedKmPerH)}
                      </>
                    )}
                  </>
                )}
              </Card>
            ))
          )}
          <Card heading="Limits">
            {number(
              "accelerationCapG",
              "Highest upward acceleration",
              `${usual.accelerationCapG} g`,
              "g",
            )}
            {number("reserveMm", "Reserve wanted before hard contact", lengthText(usual.reserveMm))}
            {number("balanceMm", "Left to right may differ by", lengthText(usual.balanceMm))}
          </Card>
          <Button
            wide
            icon="undo"
            disabled={!houseRulesSince(stored, referencePack()) && same(inForce, usual)}
            onClick={() => change((current) => withUsualRules(current, referencePack()))}
          >
            Reset to typical
          </Button>
        </div>
      </Known>
    </>
  );
}

import { useEffect, useState } from "preact/hooks";
import type { DesignEvent, RoadClass } from "../../physics/fitment.ts";
import type { RuleValueName } from "../../physics/readings/index.ts";
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
import { quantityText } from "../../saying/quantityText.ts";
import { unitText } from "../../saying/unitText.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { eventLengthText, eventWords, speedText } from "../assessment/eventWords.ts";
import { filled } from "../filled.ts";
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

const roads: readonly { value: RoadClass; text: string }[] = [
  { value: "A", text: messages.verySmooth },
  { value: "B", text: messages.bSmooth },
  { value: "C", text: messages.cAveragePatched },
  { value: "D", text: messages.dRoughUnmade },
  { value: "E", text: messages.eVeryRough },
];

const eventHeadings = {
  obstacle: messages.obstacle,
  hump: messages.speedBump,
  landing: messages.landing,
} as const;
const eventHints = {
  obstacle: messages.roundedBumpDrivenOver,
  hump: messages.speedBumpPartOf,
  landing: messages.dropOntoFlatGround,
} as const;

const evenness: readonly { value: string; text: string }[] = [
  { value: "5", text: messages.roughAndSmoothBy },
  { value: "3", text: messages.evenAllAlongKurtosis },
];

export function RulesStep({ stored, change, preferences }: StepProps) {
  const usual = usualRules(stored);
  const { rules, reference } = stored.record;
  const inForce = rulesInForce(stored);
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
    return `${Number(fromModel(value, unit).toPrecision(inches ? 2 : 3))} ${unitText(unit)}`;
  };
  const number = (name: RuleValueName, label: string, usually: string, unitWords?: string) => (
    <NumberEntry
      {...props}
      id={`rules.${name}`}
      label={label}
      hint={
        inForce[name] === usual[name]
          ? messages.usual({ usually })
          : messages.changedUsual({ usually })
      }
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
        hint={messages.usual2({ text })}
        placeholder={text.replace(/\s.*/, "")}
        after={withEvents}
      />
    );
  };

  return (
    <>
      <Known summary={messages.whereTheseComeFrom}>
        <Notice tone="info">
          <p>
            {filled(messages.theseAreTypicalRequirements, {
              name: <strong>{messages.useWithin({ use: stored.record.vehicle?.use })}</strong>,
              hasRules: Boolean(reference?.rules),
              pack: reference?.pack,
            })}
          </p>
        </Notice>
      </Known>
      {houseRulesSince(stored, referencePack()) && (
        <Notice tone="care">
          <p>{messages.libraryInUseHas({ name: referencePack().name })}</p>
        </Notice>
      )}
      {practised && (
        <p>
          {messages.roadClassAt({
            roadClass: inForce.roadClass,
            speed: speedText(inForce.speedKmPerH, preferences.length),
          })}{" "}
          {inForce.events.map((each) =>
            messages.eventInForce({ event: eventWords(each, preferences.length) }),
          )}
          {messages.atMostGReserve({
            accelerationCapG: inForce.accelerationCapG,
            reserveMm: lengthText(inForce.reserveMm),
          })}
        </p>
      )}
      <Known summary={messages.changeRequirements}>
        <div class="stack">
          <Card heading={messages.road}>
            <SelectField
              label={messages.roadClassIso8608}
              hint={
                inForce.roadClass === usual.roadClass
                  ? messages.usual3({ roadClass: usual.roadClass })
                  : messages.changedUsual2({ roadClass: usual.roadClass })
              }
              value={inForce.roadClass}
              options={roads}
              onChange={(value) => change((current) => withRoadClass(current, value as RoadClass))}
            />
            <SelectField
              label={messages.howEvenRoadIs}
              hint={
                inForce.roadKurtosis === usual.roadKurtosis
                  ? messages.typicalRoadsAreRough
                  : messages.changedFromTypical
              }
              value={String(inForce.roadKurtosis)}
              options={evenness}
              onChange={(value) =>
                change((current) => withRoadKurtosis(current, value === "3" ? 3 : 5))
              }
            />
            {number("speedKmPerH", messages.speed, usualText("roadSpeed", usual.speedKmPerH))}
            {number(
              "allowedContactsPerKm",
              messages.contactsAllowed,
              messages.tenTimesThatFor({
                usual: usualText("contactRate", usual.allowedContactsPerKm),
              }),
            )}
          </Card>
          {hasOwnEvents(stored) ? (
            <Notice tone="care">
              <p>{messages.thisCheckCameWith({ events: rules?.events?.length ?? 0 })}</p>
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
                  {messages.includeThisEvent}
                </CheckLine>
                {!isLeftOut(stored, each.kind) && (
                  <>
                    {event(each.kind, "heightM", messages.height, each.heightM)}
                    {each.kind !== "landing" && (
                      <>
                        {event(each.kind, "lengthM", messages.lengthWord, each.lengthM)}
                        {event(each.kind, "speedKmPerH", messages.speed, each.speedKmPerH)}
                      </>
                    )}
                  </>
                )}
              </Card>
            ))
          )}
          <Card heading={messages.limits}>
            {number(
              "accelerationCapG",
              messages.highestUpwardAcceleration,
              `${usual.accelerationCapG} g`,
              "g",
            )}
            {number("reserveMm", messages.reserveWantedBeforeHard, lengthText(usual.reserveMm))}
            {number("balanceMm", messages.leftToRightMay, lengthText(usual.balanceMm))}
          </Card>
          <Button
            wide
            icon="undo"
            disabled={!houseRulesSince(stored, referencePack()) && same(inForce, usual)}
            onClick={() => change((current) => withUsualRules(current, referencePack()))}
          >
            {messages.resetToTypical}
          </Button>
        </div>
      </Known>
    </>
  );
}

import type { Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import type { TakenFromPack } from "../../../records/check/checkRecord.ts";
import { useWords } from "../../../records/check/useWords.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { same } from "../../../records/pack/packDifferences.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { eventWords, speedText } from "../../assessment/eventWords.ts";
import { Button } from "../../parts/Button.tsx";
import { lengthText } from "../ladder/ladderWords.ts";

/** What the vehicle must stand in this use: defaults of ours, or as changed for this check. */
export function RulesUsed({
  fitment,
  reference,
  unit,
  go,
}: {
  fitment: Fitment;
  /** What the check took from the pack. */
  reference: TakenFromPack | undefined;
  unit: LengthUnit;
  go: (step: string) => void;
}) {
  const rules = rulesOf(fitment.use, fitment.rules);
  const house = rulesOf(fitment.use, reference?.rules);
  const changed = !same(rules, house);
  return (
    <section class="card">
      <h2>{messages.requirements({ use: said(useWords[fitment.use]) })}</h2>
      <ul class="plain-list">
        <li>
          {messages.roadClassAtContacts({
            roadClass: rules.roadClass,
            speed: speedText(rules.speedKmPerH, unit),
            allowedContactsPerKm: quantityText(
              { kind: "contactRate", value: rules.allowedContactsPerKm },
              unit,
            ),
          })}
        </li>
        {rules.events.map((event) => (
          <li key={eventWords(event, unit)}>{eventWords(event, unit)}.</li>
        ))}
        <li>{messages.upwardAccelerationOfBody({ accelerationCapG: rules.accelerationCapG })}</li>
        <li>{messages.reserveOfAtLeast({ reserveMm: lengthText(rules.reserveMm, unit) })}</li>
      </ul>
      <p class="small">
        {messages.hasRulesSelectTrueRequirements({
          hasRules: Boolean(reference?.rules),
          pack: reference?.pack,
          isChanged: Boolean(changed),
        })}
      </p>
      <ul class="plain-list small">
        <li>{messages.landingHereBeginsAt}</li>
        {rules.roadKurtosis === 5 && <li>{messages.roadIsTakenAs}</li>}
        <li>{messages.publishedToCompareSpeed({ unit })}</li>
      </ul>
      <Button icon="pencil" onClick={() => go("rules")}>
        {messages.changeRequirements}
      </Button>
    </section>
  );
}

import type { UseRules } from "../../../physics/fitment.ts";
import { screeningAssumptions } from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { quantityText } from "../../../saying/quantityText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/contacts.ts";
import { speedText } from "../../assessment/eventWords.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { DataTable } from "../../charts/DataTable.tsx";
import type { RoadContacts } from "./contactsByRoad.ts";

const roadWords = {
  A: messages.veryGood,
  B: messages.bGood,
  C: messages.cAverage,
  D: messages.dPoor,
  E: messages.eVeryPoor,
} as const;

/** How often the wheel reaches the stop, in a sentence; every class of road behind it. */
export function Contacts({
  heading,
  contacts,
  rules,
  allowedPerKm,
  unit,
}: {
  heading: string;
  contacts: readonly RoadContacts[];
  rules: UseRules;
  /** Of this stop: a progressive one may be met more often. */
  allowedPerKm: number;
  unit: LengthUnit;
}) {
  const here = contacts.find(({ roadClass }) => roadClass === rules.roadClass);
  const words = contacts
    .map(({ roadClass, unladenPerKm, ladenPerKm }) =>
      messages.roadAsMeasuredLoaded({
        roadClass: roadWords[roadClass],
        orUnknown: orUnknown(unladenPerKm, unit),
        orUnknown2: orUnknown(ladenPerKm, unit),
      }),
    )
    .join(" ");
  return (
    <ChartFigure
      heading={heading}
      words={words}
      says={
        here &&
        messages.onRoadOfThis({
          roadClass: roadWords[rules.roadClass],
          speed: speedText(rules.speedKmPerH, unit),
          orUnknown: orUnknown(here.unladenPerKm, unit),
          orUnknown2: orUnknown(here.ladenPerKm, unit),
          orUnknown3: orUnknown(allowedPerKm, unit),
        })
      }
      assumed={screeningAssumptions.map(said)}
      table={() => (
        <DataTable
          caption={heading}
          columns={[
            { name: messages.roadClass },
            { name: messages.asMeasured },
            { name: messages.loaded },
          ]}
          rows={contacts.map(({ roadClass, unladenPerKm, ladenPerKm }) => [
            roadWords[roadClass],
            orUnknown(unladenPerKm, unit),
            orUnknown(ladenPerKm, unit),
          ])}
        />
      )}
    />
  );
}

function orUnknown(perKm: number | null, unit: LengthUnit): string {
  return perKm === null
    ? messages.notKnown
    : quantityText({ kind: "contactRate", value: perKm }, unit);
}

import type { UseRules } from "../../../physics/fitment.ts";
import { screeningAssumptions } from "../../../physics/worked/index.ts";
import { quantityText } from "../../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { speedText } from "../../assessment/eventWords.ts";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { DataTable } from "../../charts/DataTable.tsx";
import type { RoadContacts } from "./contactsByRoad.ts";

const roadWords = {
  A: "A, very good",
  B: "B, good",
  C: "C, average",
  D: "D, poor",
  E: "E, very poor",
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
    .map(
      ({ roadClass, unladenPerKm, ladenPerKm }) =>
        `Road ${roadWords[roadClass]}: as measured ${orUnknown(unladenPerKm, unit)}, loaded ${orUnknown(ladenPerKm, unit)}.`,
    )
    .join(" ");
  return (
    <ChartFigure
      heading={heading}
      words={words}
      says={
        here &&
        `On the road of this use (${roadWords[rules.roadClass]}, ${speedText(rules.speedKmPerH, unit)}): ${orUnknown(here.unladenPerKm, unit)} as measured, ${orUnknown(here.ladenPerKm, unit)} loaded. Allowed: ${orUnknown(allowedPerKm, unit)} (common practice).`
      }
      assumed={screeningAssumptions}
      table={() => (
        <DataTable
          caption={heading}
          columns={[{ name: "Road class" }, { name: "As measured" }, { name: "Loaded" }]}
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
  return perKm === null ? "not known" : quantityText({ kind: "contactRate", value: perKm }, unit);
}

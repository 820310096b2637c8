import type { Fitment } from "../../../physics/fitment.ts";
import { rulesOf } from "../../../physics/road/index.ts";
import type { TakenFromPack } from "../../../records/check/checkRecord.ts";
import { useWords } from "../../../records/check/useWords.ts";
import { quantityText } from "../../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { same } from "../../../records/pack/packDifferences.ts";
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
      <h2>Requirements: {useWords[fitment.use]}</h2>
      <ul class="plain-list">
        <li>
          Road class {rules.roadClass} at {speedText(rules.speedKmPerH, unit)}, contacts at most{" "}
          {quantityText({ kind: "contactRate", value: rules.allowedContactsPerKm }, unit)}.
        </li>
        {rules.events.map((event) => (
          <li key={eventWords(event, unit)}>{eventWords(event, unit)}.</li>
        ))}
        <li>Upward acceleration of the body at most {rules.accelerationCapG} g.</li>
        <li>Reserve of at least {lengthText(rules.reserveMm, unit)} past full compression.</li>
      </ul>
      <p class="small">
        {reference?.rules
          ? `Requirements in “${reference.pack}”, common practice where they say nothing.`
          : "Common practice."}
        {changed && " Changed for this check."} None of it comes from a published standard.
      </p>
      <ul class="plain-list small">
        <li>
          A landing here begins at ride height. It is harsher than a real drop of that height, which
          begins with the wheels hanging.
        </li>
        {rules.roadKurtosis === 5 && (
          <li>
            The road is taken as rough and smooth by turns: large bumps come more often than on an
            even one.
          </li>
        )}
        <li>
          Published, to compare: speed bumps are{" "}
          {unit === "in" ? "12 ft long and 3 to 4 in high" : "3.7 m long and 75 to 100 mm high"}.
          Ride trials allow 2.5 g at the driver's seat, filtered at 30 Hz. Ours is at the body over
          the corner.
        </li>
      </ul>
      <Button icon="pencil" onClick={() => go("rules")}>
        Change the requirements
      </Button>
    </section>
  );
}

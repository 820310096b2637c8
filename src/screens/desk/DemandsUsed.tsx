import { capital } from "../../physics/sentence.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { OtherDemand } from "../../records/review/deskDemands.ts";
import { DeskTable } from "./DeskTable.tsx";

/** By what a check is judged at this desk, and what it demands itself where that differs. */
export function DemandsUsed({
  demands,
  pack,
  unit,
}: {
  demands: readonly OtherDemand[];
  pack: Pack;
  unit: LengthUnit;
}) {
  const source = pack.rules
    ? `the requirements in “${pack.name}”, and common practice where they say nothing`
    : "common practice";
  return (
    <section class="card" aria-labelledby="demands-heading">
      <h2 id="demands-heading">What it is judged by</h2>
      <p>
        This review desk's own requirements: {source}.{" "}
        {demands.length === 0 && "The check has the same."}
      </p>
      {demands.length > 0 && (
        <DeskTable
          caption="Requirements that differ"
          columns={["Demand", "Here", "In the check, not used"]}
          rows={demands.map(({ name, words, theirs, ours }) => ({
            key: name,
            cells: [capital(words), sentenceText(ours, unit), sentenceText(theirs, unit)],
          }))}
        />
      )}
    </section>
  );
}

import { capital } from "../../physics/sentence.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import type { OtherDemand } from "../../records/review/deskDemands.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
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
    ? messages.requirementsInAndCommon({ name: pack.name })
    : messages.commonPractice;
  return (
    <section class="card" aria-labelledby="demands-heading">
      <h2 id="demands-heading">{messages.whatItIsJudged}</h2>
      <p>
        {messages.thisReviewDesksOwn({ source })} {demands.length === 0 && messages.checkHasSame}
      </p>
      {demands.length > 0 && (
        <DeskTable
          caption={messages.requirementsThatDiffer}
          columns={[messages.demand, messages.here, messages.inCheckNotUsed]}
          rows={demands.map(({ name, words, theirs, ours }) => ({
            key: name,
            cells: [said(capital(words)), sentenceText(ours, unit), sentenceText(theirs, unit)],
          }))}
        />
      )}
    </section>
  );
}

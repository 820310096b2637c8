import { useState } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop, PackTest } from "../../records/pack/pack.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { goTo } from "../addresses.ts";
import { filled } from "../filled.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { KeptRemarks } from "./KeptRemarks.tsx";
import { changePack, withStop } from "./packEdits.ts";
import { packMergeHref, testReportHref } from "./packRoutes.ts";
import { TestCharts } from "./TestCharts.tsx";
import { plotsOfPackTest } from "./testPlots.ts";

/** The tests that the pack keeps of a stop. */
export function StopTests({ pack, stop, unit }: { pack: Pack; stop: PackStop; unit: LengthUnit }) {
  const [shown, setShown] = useState<string | null>(null);
  const tests = stop.tests ?? [];
  if (tests.length === 0) return <p class="small soft">{messages.thisStopHasNo}</p>;
  const takeOut = async (test: PackTest) => {
    const next = { ...stop, tests: tests.filter(({ id }) => id !== test.id) };
    const result = await changePack(
      withStop(pack, next),
      messages.deletedOf({ file: test.file, name: stop.name }),
    );
    if (result.kind === "changed" && result.kept.kind === "changedElsewhere") goTo(packMergeHref);
  };
  return (
    <ul class="check-list">
      {tests.map((test) => (
        <li key={test.id} class="stack-close">
          <div class="card">
            <h3>{test.file}</h3>
            <p class="small soft">{testFacts(test, unit)}</p>
            {test.remarks.length > 0 && (
              <div class="small">
                <KeptRemarks test={test} unit={unit} />
              </div>
            )}
            <div class="row">
              <Button
                expanded={shown === test.id}
                onClick={() => setShown(shown === test.id ? null : test.id)}
              >
                {messages.drawings}
                <span class="unseen"> {messages.ofWord2({ file: test.file })}</span>
              </Button>
              <ButtonLink href={testReportHref(stop.id, test.id)}>
                {messages.pageToPrint}
                <span class="unseen"> {messages.ofWord2({ file: test.file })}</span>
              </ButtonLink>
              <Button look="danger" icon="bin" onClick={() => takeOut(test)}>
                {filled(messages.deleteWord2, { file: <span class="unseen"> {test.file}</span> })}
              </Button>
            </div>
          </div>
          {shown === test.id && <TestCharts plots={plotsOfPackTest(test)} unit={unit} />}
        </li>
      ))}
    </ul>
  );
}

const kindWords: { readonly [Kind in PackTest["kind"]]: string } = {
  rows: messages.depthSpeedForce,
  cycles: messages.cycles,
  timed: messages.timeDepthForce,
};

function testFacts(test: PackTest, unit: LengthUnit): string {
  const facts = [
    kindWords[test.kind],
    messages.rows({ rows: test.rows }),
    messages.imported({ importedAt: test.importedAt.slice(0, 10) }),
  ];
  if (test.curve?.length) facts.push(messages.staticCurve2);
  facts.push(test.damping?.length ? "damping" : messages.noDamping2);
  if (test.loss && test.loss.restLoss[0] > 0) facts.push(messages.lossAtRest);
  if (test.loss && test.loss.branches.length > 0) facts.push(messages.fadingParts);
  for (const { lossJ, frequencyHz } of test.blocks ?? (test.cycles ? [test.cycles] : [])) {
    facts.push(
      messages.lossCycleAtHz({
        lossJ: quantityText({ kind: "energy", value: lossJ }, unit),
        frequencyHz: frequencyHz.toFixed(2),
      }),
    );
  }
  const { conditions = {} } = test;
  facts.push(...Object.values(conditions).filter((text) => text !== ""));
  return facts.join(" · ");
}

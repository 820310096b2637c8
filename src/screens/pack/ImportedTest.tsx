import { useMemo, useState } from "preact/hooks";
import { foundStop } from "../../physics/stopTests/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop, TestConditions } from "../../records/pack/pack.ts";
import type { TestImport } from "../../records/testRows/testFile.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { language } from "../../words/language.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { ConditionFields } from "./ConditionFields.tsx";
import { HitOfTest } from "./HitOfTest.tsx";
import { changePack, withStop } from "./packEdits.ts";
import { packItemHref } from "./packRoutes.ts";
import { RemarksToRead, unreadRemarks } from "./RemarksToRead.tsx";
import { RowsFound } from "./RowsFound.tsx";
import { TestCharts } from "./TestCharts.tsx";
import { TimedFound } from "./TimedFound.tsx";
import { plotsOf } from "./testPlots.ts";
import { packTestOf, remarksOf, shortOfUsable, stopWithTest } from "./testTakeOver.ts";
import { goAfter } from "./useItemDraft.ts";

/** What came out of a file: figures, faults in words, drawings, and what to take over into the stop. */
export function ImportedTest({
  pack,
  stop,
  imported,
  unit,
}: {
  pack: Pack;
  stop: PackStop;
  imported: TestImport;
  unit: LengthUnit;
}) {
  const { file, analysis } = imported;
  const found = useMemo(() => foundStop(analysis), [analysis]);
  const remarks = useMemo(() => remarksOf(imported), [imported]);
  const [read, setRead] = useState<ReadonlySet<string>>(new Set());
  const [curve, setCurve] = useState(true);
  const [loss, setLoss] = useState(true);
  const [conditions, setConditions] = useState<TestConditions>({});
  const [faults, setFaults] = useState<readonly string[]>([]);
  const plots = useMemo(() => plotsOf(analysis), [analysis]);
  const short = shortOfUsable(stop, imported);
  const unread = unreadRemarks(remarks, read);
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const keep = async () => {
    const test = packTestOf(imported, conditions);
    const next = stopWithTest(stop, imported, test, { curve, loss });
    const result = await changePack(
      withStop(pack, next),
      messages.importedFor({ name: file.name, name2: stop.name }),
    );
    setFaults(
      goAfter(result, packItemHref("stop", stop.id)).map(({ sentence }) =>
        sentenceText(sentence, unit),
      ),
    );
  };
  return (
    <>
      <section class="card" aria-labelledby="read-heading">
        <h2 id="read-heading">{file.name}</h2>
        <p class="small">{factsOf(file)}</p>
        <RemarksToRead remarks={remarks} read={read} onRead={setRead} unit={unit} />
        {analysis.kind === "rows" ? (
          <RowsFound analysis={analysis} unit={unit} />
        ) : (
          <TimedFound analysis={analysis} unit={unit} />
        )}
      </section>
      <TestCharts plots={plots} unit={unit} />
      {found && <HitOfTest analysis={analysis} unit={unit} />}
      <section class="card" aria-labelledby="take-heading">
        <h2 id="take-heading">{messages.saveItWith({ name: stop.name })}</h2>
        {found && (
          <CheckLine
            checked={curve}
            onChange={setCurve}
            hint={messages.pointsTakePlaceOf({
              curve: found.curve.length,
              curve2: stop.curve.length,
            })}
          >
            {messages.useThisForceCurve}
          </CheckLine>
        )}
        {curve && short !== null && (
          <Notice tone="care">
            <p>
              {messages.testEndsBeforeUsable({
                short: length(short),
                usableCompressionMm: length(stop.usableCompressionMm),
              })}
            </p>
          </Notice>
        )}
        {found?.testedAtSpeed && (
          <CheckLine checked={loss} onChange={setLoss} hint={messages.lossAtRestFading}>
            {messages.useThisLoss}
          </CheckLine>
        )}
        {!found && <p class="small">{messages.itIsSavedAs}</p>}
        <ConditionFields conditions={conditions} onChange={setConditions} />
        {unread > 0 && (
          <p class="small" id="unread-remarks">
            {unread === 1 ? messages.oneRemarkAboveIs : messages.remarksAboveAreNot({ unread })}
          </p>
        )}
        <Button look="main" icon="tick" onClick={keep} disabled={unread > 0}>
          {messages.save}
        </Button>
        {faults.length > 0 && (
          <Notice tone="no" live>
            {faults.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </Notice>
        )}
      </section>
    </>
  );
}

function factsOf({ rows, rowsLeftOut, columns, decimalMark }: TestImport["file"]): string {
  const used = columns.map((column) => messages.columnIn(column)).join(", ");
  const out =
    rowsLeftOut > 0 ? messages.leftOut({ rowsLeftOut: rowsLeftOut.toLocaleString(language) }) : "";
  const mark = decimalMark === "," ? "comma" : "point";
  return messages.rowsColumnsDecimal({ rows: rows.toLocaleString(language), out, used, mark });
}

import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { ValueName } from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import type { TypedReading } from "../../records/check/checkRecord.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import { isToolId } from "../../records/entry/tools.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type PersonDifference, personDifferences } from "../../records/filling/secondPerson.ts";
import { readingsOf } from "../../records/review/oddReadings.ts";
import {
  type DifferenceStatistics,
  differenceStatistics,
  leastPairs,
  measuredTolerances,
} from "../../records/review/repeatability.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { language } from "../../words/language.ts";
import { readingKind } from "../answer/formulas/readingById.ts";
import { toolWords } from "../check/reading/toolWords.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { keepReferencePack, useReferencePack } from "../referencePack.ts";
import { DeskTable, type DeskTableRow } from "./DeskTable.tsx";
import { eachRecord } from "./eachRecord.ts";
import type { Desk } from "./useDesk.ts";
import { countWords } from "./words.ts";

export interface PeopleAtDeskProps {
  readonly desk: Desk;
  readonly unit: LengthUnit;
  onLeave(): void;
}

/** How far two people differ who measured the same vehicle, by reading and tool, over all checks. */
export function PeopleAtDesk({ desk, unit, onLeave }: PeopleAtDeskProps) {
  const heading = useHeadingFocus("people");
  const pack = useReferencePack();
  const [all, setAll] = useState<{ differences: PersonDifference[]; checks: number } | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const { store } = desk;
  useEffect(() => {
    if (!store) return;
    let left = false;
    const differences: PersonDifference[] = [];
    let checks = 0;
    eachRecord(
      store,
      ({ record }) => {
        if (record.second === undefined) return;
        const first = new Map<string, TypedReading>(
          readingsOf(record).map(({ id, reading }) => [id, reading]),
        );
        checks += 1;
        differences.push(...personDifferences((id) => first.get(id) ?? null, record.second));
      },
      () => left,
    ).then((outcome) => {
      if (left) return;
      if (outcome.ok) setAll({ differences, checks });
      else setFault(outcome.fault);
    });
    return () => {
      left = true;
    };
  }, [store]);
  const rows = all ? differenceStatistics(all.differences) : [];
  const offered = measuredTolerances(rows);
  const take = async () => {
    const others = (pack.repeatability ?? []).filter(
      (known) =>
        !offered.some((each) => each.reading === known.reading && each.tool === known.tool),
    );
    const next = { ...pack, repeatability: [...others, ...offered] };
    const kept = await keepReferencePack(next);
    if (kept.kind === "kept" && desk.shared?.state) await desk.shared.offerPack();
    setSaid(
      kept.kind === "kept"
        ? messages.nowInPartsLibrary({
            count: messages.measuredCount({ told: offered.length.toLocaleString(language) }),
          })
        : messages.partsLibraryCouldNot,
    );
  };
  return (
    <Screen
      wide
      top={
        <>
          <Button look="quiet" icon="back" label={messages.toReviewDesk} onClick={onLeave} />
          <span class="screen-name">{messages.twoPeople}</span>
        </>
      }
      actions={
        <Button look="main" disabled={offered.length === 0} onClick={take}>
          {messages.useMeasured}
        </Button>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.howFarTwoPeople}
      </h1>
      {fault && (
        <Notice tone="no" live>
          <p>{inModelUnits(fault.sentence)}</p>
        </Notice>
      )}
      {!fault && all === null && <p role="status">{messages.lookingThroughAllChecks}</p>}
      {all && (
        <p>
          {all.checks === 0
            ? messages.noCheckWasMeasured
            : messages.measuredByTwoPeople({ count: countWords(all.checks, "check"), leastPairs })}
        </p>
      )}
      {rows.length > 0 && (
        <>
          <DeskTable
            caption={messages.differencesByReadingAnd}
            columns={[
              messages.reading,
              messages.tool,
              messages.pairs,
              messages.median,
              messages.spread,
              messages.largest,
              messages.measured2,
            ]}
            rows={rows.map((row) => rowOf(row, unit))}
          />
          <p class="small soft">{messages.spreadHowMuchOne}</p>
        </>
      )}
      {said && (
        <Notice tone="ok" live>
          <p>{said}</p>
        </Notice>
      )}
    </Screen>
  );
}

function rowOf(row: DifferenceStatistics, unit: LengthUnit): DeskTableRow {
  const id = row.reading as ValueName;
  const kind = readingKind(id);
  const text = (value: number) =>
    kind === undefined ? String(Number(value.toPrecision(3))) : quantityText({ kind, value }, unit);
  return {
    key: `${row.reading} ${row.tool}`,
    cells: [
      capital(said(catalogueEntry(id).name)),
      isToolId(row.tool) ? said(toolWords[row.tool].name) : messages.differentOrNotTold,
      row.pairs,
      text(row.median),
      text(row.spread),
      text(row.largest),
      row.tol === null ? messages.tooFew : `± ${text(row.tol)}`,
    ],
  };
}

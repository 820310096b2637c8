import { stopFaults } from "../../../records/check/recordRules.ts";
import { changeRecord, type StoredCheck } from "../../../records/check/storedCheck.ts";
import { type Entry, parseText } from "../../../records/entry/entry.ts";
import { entryOutcome } from "../../../records/entry/entryPath.ts";
import { estimateSentence } from "../../../records/pack/stopTitle.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import { SimilarForces } from "../../choosing/SimilarForces.tsx";
import type { StepProps } from "../../guide/stepProps.ts";
import { Notice } from "../../parts/Notice.tsx";
import { useSettled } from "../settled.ts";
import { BlockForces } from "./BlockForces.tsx";
import { CurveChart } from "./CurveChart.tsx";
import { StopDamping } from "./StopDamping.tsx";
import { TableEntry } from "./TableEntry.tsx";

const id = "stop.curve";

/** The first row that is not deeper and harder than the one before; -1 where all are. */
function firstNotRising({ texts, unit }: Entry): number {
  let last: readonly [number, number] = [0, 0];
  for (let row = 0; 2 * row < texts.length; row += 1) {
    const depth = parseText(texts[2 * row] ?? "", "length", unit, "zeroOrMore");
    const force = parseText(texts[2 * row + 1] ?? "", "force", unit, "zeroOrMore");
    if (!depth.ok || !force.ok) continue;
    const point = [depth.value.value, force.value.value] as const;
    const origin = row === 0 && point[0] === 0 && point[1] === 0;
    if (!origin && (point[0] <= last[0] || point[1] <= last[1])) return row;
    last = point;
  }
  return -1;
}

/** A curve that is typed is no estimate any more. */
function typedCurve(before: StoredCheck, after: StoredCheck): StoredCheck {
  const same =
    JSON.stringify(before.record.stop?.curve) === JSON.stringify(after.record.stop?.curve);
  if (same || after.record.stop?.estimated === undefined) return after;
  return changeRecord(after, (record) => {
    const { estimated: _, ...stop } = record.stop ?? {};
    return { ...record, stop };
  });
}

export function CurveStep({ stored, change, preferences }: StepProps) {
  const entry = stored.entries[id];
  const settled = useSettled(JSON.stringify(entry ?? null));
  const outcome = entry && settled ? entryOutcome(id, entry) : null;
  const unreadable =
    outcome && !outcome.ok && outcome.fault.code !== "entryEmpty" ? outcome.fault : null;
  const fault =
    unreadable ??
    (settled ? stopFaults(stored.record.stop ?? {}).find(({ reading }) => reading === id) : null);
  const estimate = estimateSentence({ name: "", ...stored.record.stop });
  return (
    <>
      <p class="known-lead">{messages.fromItsTestSheet}</p>
      <SimilarForces stored={stored} onTake={change} unit={preferences.length} />
      <BlockForces stored={stored} change={change} preferences={preferences} />
      {estimate && <p class="small">{said(estimate)}</p>}
      {fault ? (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, preferences.length)}</p>
        </Notice>
      ) : (
        <CurveChart stop={stored.record.stop ?? {}} unit={preferences.length} />
      )}
      <TableEntry
        id={id}
        kind="force"
        columns={[
          {
            name: messages.pressedBy,
            within: messages.pressedByWithin,
            metric: "mm",
            inches: "in",
          },
          { name: messages.force, within: messages.forceWithin, metric: "N", inches: "lbf" },
        ]}
        startRows={4}
        wrongRow={settled && entry ? firstNotRising(entry) : -1}
        stored={stored}
        preferences={preferences}
        change={(update) => change((now) => typedCurve(now, update(now)))}
      />
      <StopDamping stored={stored} change={change} preferences={preferences} />
    </>
  );
}

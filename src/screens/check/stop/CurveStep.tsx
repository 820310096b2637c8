import { entryOutcome } from "../../../records/entryPath.ts";
import { sentenceText } from "../../../records/quantityText.ts";
import { stopFaults } from "../../../records/recordRules.ts";
import { Notice } from "../../parts/Notice.tsx";
import { useSettled } from "../settled.ts";
import type { StepProps } from "../stepProps.ts";
import { CurvePlot } from "./CurvePlot.tsx";
import { TableEntry } from "./TableEntry.tsx";

const id = "stop.curve";

export function CurveStep({ stored, change, preferences }: StepProps) {
  const entry = stored.entries[id];
  const settled = useSettled(JSON.stringify(entry ?? null));
  const outcome = entry && settled ? entryOutcome(id, entry) : null;
  const unreadable =
    outcome && !outcome.ok && outcome.fault.code !== "entryEmpty" ? outcome.fault : null;
  const fault =
    unreadable ??
    (settled ? stopFaults(stored.record.stop ?? {}).find(({ reading }) => reading === id) : null);
  return (
    <>
      <p>
        From its test sheet: how far the stop was pressed and the force it gave. The first point (0,
        0) goes without saying. A copied table can be pasted into the first field.
      </p>
      <CurvePlot stop={stored.record.stop ?? {}} unit={preferences.length} />
      <TableEntry
        id={id}
        kind="force"
        columns={[
          { name: "Pressed by", metric: "mm", inches: "in" },
          { name: "Force", metric: "N", inches: "lbf" },
        ]}
        startRows={4}
        stored={stored}
        change={change}
      />
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, preferences.length)}</p>
        </Notice>
      )}
    </>
  );
}

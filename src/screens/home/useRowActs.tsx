import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { RowSetAside } from "../../storage/checkRow.ts";
import type { RowAct } from "./CheckRow.tsx";
import { RowDeed, SetAsideRow } from "./laterParts.ts";
import type { WantedDeed } from "./RowDeed.tsx";
import type { ChecksHere } from "./useChecks.ts";

/** What can be done with a row of the list; `dialogs` is what that shows. */
export function useRowActs(here: ChecksHere, unit: LengthUnit) {
  const { store, settle, setSaid } = here;
  const [undo, setUndo] = useState<ListedCheck | null>(null);
  const [deed, setDeed] = useState<WantedDeed | null>(null);
  const [used, setUsed] = useState(false);

  const act = (wanted: RowAct, stored: ListedCheck) => {
    setUsed(true);
    setDeed({ wanted, stored });
  };

  const asideRow = (row: RowSetAside) => (
    <SetAsideRow
      key={`aside ${String(row.key)}`}
      row={row}
      onSave={async () => {
        const text = store && (await store.rowText(row.key));
        if (text?.ok === false) setSaid(text.fault.sentence);
        if (!text?.ok) return;
        const { saveDamagedRow } = await import("../checkFile.ts");
        const fault = await saveDamagedRow(text.value);
        if (fault) setSaid(fault.sentence);
      }}
      onDelete={() => store && settle(store.discard(row.key))}
    />
  );

  const dialogs: ComponentChildren = used && (
    <RowDeed
      here={here}
      unit={unit}
      deed={deed}
      undo={undo}
      onDone={() => setDeed(null)}
      onUndo={setUndo}
    />
  );

  return { act, asideRow, dialogs, forgetDeleted: () => setUndo(null) };
}

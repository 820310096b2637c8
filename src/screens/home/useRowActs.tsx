import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { renameStored, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { RowSetAside } from "../../storage/checkRow.ts";
import { SendStored } from "../exchange/SendButton.tsx";
import type { RowAct } from "./CheckRow.tsx";
import { JobDialog, RenameDialog, SetAsideRow, UndoBar } from "./laterParts.ts";
import type { ChecksHere } from "./useChecks.ts";

/** What can be done with a row of the list, and the dialogs that this opens. */
export function useRowActs(here: ChecksHere, unit: LengthUnit) {
  const { store, checks, settle, setSaid, withWhole } = here;
  const [undo, setUndo] = useState<ListedCheck | null>(null);
  const [sending, setSending] = useState<StoredCheck | null>(null);
  const [renaming, setRenaming] = useState<ListedCheck | null>(null);
  const [inJob, setInJob] = useState<ListedCheck | null>(null);

  const act = async (wanted: RowAct, stored: ListedCheck) => {
    const { id } = stored;
    if (!store) return;
    switch (wanted) {
      case "rename":
        return setRenaming(stored);
      case "copy":
        return settle(store.copy(id, `${checkName(stored)} (copy)`));
      case "send":
        return withWhole(id, setSending);
      case "save":
        return withWhole(id, async (whole) =>
          (await import("../checkFile.ts")).saveCheckFile(whole),
        );
      case "job":
        return setInJob(stored);
      case "otherAxle":
        return withWhole(id, async (whole) => {
          const { beginOtherAxle } = await import("../job/beginOtherAxle.ts");
          await settle(beginOtherAxle(store, whole));
        });
      default:
        if (await settle(store.remove(id))) setUndo(stored);
    }
  };

  const asideRow = (row: RowSetAside) => (
    <SetAsideRow
      key={`aside ${String(row.key)}`}
      row={row}
      onSave={async () => {
        const text = store && (await store.rowText(row.key));
        if (text?.ok) (await import("../checkFile.ts")).saveDamagedRow(text.value);
        else if (text?.ok === false) setSaid(text.fault.sentence);
      }}
      onDelete={() => store && settle(store.discard(row.key))}
    />
  );

  const dialogs: ComponentChildren = (
    <>
      {sending && <SendStored stored={sending} unit={unit} onLeave={() => setSending(null)} />}
      {renaming && (
        <RenameDialog
          stored={renaming}
          onLeave={() => setRenaming(null)}
          onName={(name) => {
            setRenaming(null);
            if (store) {
              settle(store.update(renaming.id, (current) => renameStored(current, name)));
            }
          }}
        />
      )}
      {inJob && store && (
        <JobDialog
          store={store}
          stored={inJob}
          checks={checks ?? []}
          onLeave={() => setInJob(null)}
          onDone={(kept) => {
            setInJob(null);
            settle(Promise.resolve(kept));
          }}
        />
      )}
      {undo && (
        <UndoBar
          key={undo.id}
          words={`Deleted: ${checkName(undo)}`}
          onUndo={() => {
            setUndo(null);
            if (store) settle(store.restore(undo.id));
          }}
          onGone={() => setUndo(null)}
        />
      )}
    </>
  );

  return { act, asideRow, dialogs, forgetDeleted: () => setUndo(null) };
}

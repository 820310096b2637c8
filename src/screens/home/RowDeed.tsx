import { useEffect, useState } from "preact/hooks";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { renameStored, type StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { SendStored } from "../exchange/SendButton.tsx";
import { beginOtherAxle } from "../job/beginOtherAxle.ts";
import { JobDialog } from "../job/JobDialog.tsx";
import type { RowAct } from "./CheckRow.tsx";
import { RenameDialog } from "./RenameDialog.tsx";
import { UndoBar } from "./UndoBar.tsx";
import type { ChecksHere } from "./useChecks.ts";

/** What is wanted of a row: done at once, or asked about first. */
export interface WantedDeed {
  readonly wanted: RowAct;
  readonly stored: ListedCheck;
}

export interface RowDeedProps {
  readonly here: ChecksHere;
  readonly unit: LengthUnit;
  readonly deed: WantedDeed | null;
  /** The check that was deleted last, while that can be undone here. */
  readonly undo: ListedCheck | null;
  readonly onDone: () => void;
  readonly onUndo: (deleted: ListedCheck | null) => void;
}

/** Does what is wanted of a row of the list, with the dialogs that this needs. */
export function RowDeed({ here, unit, deed, undo, onDone, onUndo }: RowDeedProps) {
  const { store, checks, settle, setSaid, withWhole } = here;
  const [sending, setSending] = useState<StoredCheck | null>(null);

  useEffect(() => {
    if (!deed || !store) return;
    const { wanted, stored } = deed;
    const { id } = stored;
    const atOnce: { readonly [Act in RowAct]?: () => Promise<unknown> } = {
      copy: () => settle(store.copy(id, messages.copy2({ checkName: said(checkName(stored)) }))),
      send: () => withWhole(id, setSending),
      save: () =>
        withWhole(id, async (whole) => {
          const { saveCheckFile } = await import("../checkFile.ts");
          const fault = await saveCheckFile(whole);
          if (fault) setSaid(fault.sentence);
        }),
      otherAxle: () => withWhole(id, (whole) => settle(beginOtherAxle(store, whole))),
      delete: async () => {
        if (await settle(store.remove(id))) onUndo(stored);
      },
    };
    const act = atOnce[wanted];
    if (act) act().then(onDone);
  }, [deed]);

  if (!store) return null;
  return (
    <>
      {sending && <SendStored stored={sending} unit={unit} onLeave={() => setSending(null)} />}
      {deed?.wanted === "rename" && (
        <RenameDialog
          stored={deed.stored}
          onLeave={onDone}
          onName={(name) => {
            onDone();
            settle(store.update(deed.stored.id, (current) => renameStored(current, name)));
          }}
        />
      )}
      {deed?.wanted === "job" && (
        <JobDialog
          store={store}
          stored={deed.stored}
          checks={checks ?? []}
          onLeave={onDone}
          onDone={(kept) => {
            onDone();
            settle(Promise.resolve(kept));
          }}
        />
      )}
      {undo && (
        <UndoBar
          key={undo.id}
          words={messages.deleted2({ checkName: said(checkName(undo)) })}
          onUndo={() => {
            onUndo(null);
            settle(store.restore(undo.id));
          }}
          onGone={() => onUndo(null)}
        />
      )}
    </>
  );
}

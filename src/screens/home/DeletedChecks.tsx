import { useState } from "preact/hooks";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { Button } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";

export interface DeletedChecksProps {
  readonly deleted: readonly ListedCheck[];
  readonly onRestore: (id: string) => void;
  /** All of them, for good. */
  readonly onPurge: () => void;
}

export function DeletedChecks({ deleted, onRestore, onPurge }: DeletedChecksProps) {
  const [asking, setAsking] = useState(false);
  const count = deleted.length;
  return (
    <Disclosure summary={`Deleted checks (${count})`}>
      <ul class="stack-close">
        {deleted.map((stored) => (
          <li key={stored.id} class="deleted-row">
            <span>
              <bdi>{checkName(stored)}</bdi>{" "}
              <span class="small soft">deleted {dateText(stored.deletedAt ?? "")}</span>
            </span>
            <Button
              icon="undo"
              label={`Bring back ${checkName(stored)}`}
              onClick={() => onRestore(stored.id)}
            >
              Bring back
            </Button>
          </li>
        ))}
      </ul>
      <Button look="danger" icon="bin" onClick={() => setAsking(true)}>
        Delete for good
      </Button>
      {asking && (
        <Dialog
          heading={count === 1 ? "Delete this check for good?" : `Delete ${count} checks for good?`}
          onLeave={() => setAsking(false)}
          actions={
            <>
              <Button onClick={() => setAsking(false)}>Leave them</Button>
              <Button
                look="danger"
                onClick={() => {
                  setAsking(false);
                  onPurge();
                }}
              >
                Delete for good
              </Button>
            </>
          }
        >
          <p>Nobody can bring them back after that.</p>
        </Dialog>
      )}
    </Disclosure>
  );
}

import { useState } from "preact/hooks";
import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
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
    <Disclosure summary={messages.deletedChecks({ count })}>
      <ul class="stack-close">
        {deleted.map((stored) => (
          <li key={stored.id} class="deleted-row">
            <span>
              <bdi>{said(checkName(stored))}</bdi>{" "}
              <span class="small soft">
                {messages.deleted({ deletedAt: dateText(stored.deletedAt ?? "") })}
              </span>
            </span>
            <Button
              icon="undo"
              label={messages.bringBack({ checkName: said(checkName(stored)) })}
              onClick={() => onRestore(stored.id)}
            >
              {messages.bringBack2}
            </Button>
          </li>
        ))}
      </ul>
      <Button look="danger" icon="bin" onClick={() => setAsking(true)}>
        {messages.deleteForGood}
      </Button>
      {asking && (
        <Dialog
          heading={
            count === 1 ? messages.deleteThisCheckFor : messages.deleteChecksForGood({ count })
          }
          onLeave={() => setAsking(false)}
          actions={
            <>
              <Button onClick={() => setAsking(false)}>{messages.leaveThem}</Button>
              <Button
                look="danger"
                onClick={() => {
                  setAsking(false);
                  onPurge();
                }}
              >
                {messages.deleteForGood}
              </Button>
            </>
          }
        >
          <p>{messages.nobodyCanBringThem}</p>
        </Dialog>
      )}
    </Disclosure>
  );
}

import type { StoredCheck } from "../../records/storedCheck.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { checkName, dateText } from "./checkName.ts";

export function DeletedChecks({
  deleted,
  onRestore,
}: {
  deleted: readonly StoredCheck[];
  onRestore: (id: string) => void;
}) {
  return (
    <Disclosure summary={`Deleted checks (${deleted.length})`}>
      <ul class="stack-close">
        {deleted.map((stored) => (
          <li key={stored.id} class="deleted-row">
            <span>
              {checkName(stored)}{" "}
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
    </Disclosure>
  );
}

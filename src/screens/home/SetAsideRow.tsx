import { useState } from "preact/hooks";
import type { RowSetAside } from "../../storage/checkRow.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { Button } from "../parts/Button.tsx";

export interface SetAsideRowProps {
  readonly row: RowSetAside;
  readonly onSave: () => void;
  readonly onDelete: () => void;
}

/** A row of the phone's storage that can't be shown as a check: it can be saved, and deleted. */
export function SetAsideRow({ row, onSave, onDelete }: SetAsideRowProps) {
  const [asking, setAsking] = useState(false);
  const name = row.name || "A check without a name";
  return (
    <li class="check-row">
      <div class="check-link">
        <StateMark state="no" size={32} label="" />
        <span class="check-words">
          <bdi class="check-name">{name}</bdi>
          <span class="small soft">Damaged: it can't be shown</span>
        </span>
      </div>
      {asking ? (
        <div class="check-actions">
          <p>Nobody can bring it back after that.</p>
          <Button onClick={() => setAsking(false)}>Cancel</Button>
          <Button look="danger" icon="bin" onClick={onDelete}>
            Delete for good
          </Button>
        </div>
      ) : (
        <div class="check-actions">
          <Button icon="file" label={`Save what is left of ${name}`} onClick={onSave}>
            Save what is left
          </Button>
          <Button icon="bin" label={`Delete ${name}`} onClick={() => setAsking(true)}>
            Delete
          </Button>
        </div>
      )}
    </li>
  );
}

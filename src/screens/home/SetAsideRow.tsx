import { useState } from "preact/hooks";
import type { RowSetAside } from "../../storage/checkRow.ts";
import * as messages from "../../words/compiled/screens/home.ts";
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
  const name = row.name || messages.checkWithoutName;
  return (
    <li class="check-row">
      <div class="check-link">
        <StateMark state="no" size={32} label="" />
        <span class="check-words">
          <bdi class="check-name">{name}</bdi>
          <span class="small soft">{messages.damagedItCantBe}</span>
        </span>
      </div>
      {asking ? (
        <div class="check-actions">
          <p>{messages.nobodyCanBringIt}</p>
          <Button onClick={() => setAsking(false)}>{messages.cancel}</Button>
          <Button look="danger" icon="bin" onClick={onDelete}>
            {messages.deleteForGood}
          </Button>
        </div>
      ) : (
        <div class="check-actions">
          <Button icon="file" label={messages.saveWhatIsLeft({ name })} onClick={onSave}>
            {messages.saveWhatIsLeft2}
          </Button>
          <Button icon="bin" label={messages.deleteWord2({ name })} onClick={() => setAsking(true)}>
            {messages.deleteWord}
          </Button>
        </div>
      )}
    </li>
  );
}

import { useState } from "preact/hooks";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { Button } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { TextField } from "../parts/Field.tsx";

interface RenameDialogProps {
  readonly stored: ListedCheck;
  readonly onLeave: () => void;
  readonly onName: (name: string) => void;
}

export function RenameDialog({ stored, onLeave, onName }: RenameDialogProps) {
  const [name, setName] = useState(stored.name || said(checkName(stored)));
  const done = () => onName(name.trim());
  return (
    <Dialog
      heading={messages.rename}
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>{messages.cancel}</Button>
          <Button look="main" onClick={done} disabled={name.trim() === ""}>
            {messages.rename}
          </Button>
        </>
      }
    >
      <TextField
        label={messages.nameWord}
        value={name}
        maxLength={200}
        capitals
        onInput={setName}
        onEnter={() => {
          if (name.trim() !== "") done();
        }}
      />
    </Dialog>
  );
}

import { useState } from "preact/hooks";
import { checkName } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { Button } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { TextField } from "../parts/Field.tsx";

interface RenameDialogProps {
  readonly stored: ListedCheck;
  readonly onLeave: () => void;
  readonly onName: (name: string) => void;
}

export function RenameDialog({ stored, onLeave, onName }: RenameDialogProps) {
  const [name, setName] = useState(stored.name || checkName(stored));
  const done = () => onName(name.trim());
  return (
    <Dialog
      heading="Rename"
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>Cancel</Button>
          <Button look="main" onClick={done} disabled={name.trim() === ""}>
            Rename
          </Button>
        </>
      }
    >
      <TextField
        label="Name"
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

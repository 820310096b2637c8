import { useState } from "preact/hooks";
import type { Fault } from "../physics/outcome.ts";
import type { StoredCheck } from "../records/check/storedCheck.ts";
import { saveCheckFile } from "./checkFile.ts";
import { Button, type ButtonLook } from "./parts/Button.tsx";
import { FaultNotice } from "./parts/FaultNotice.tsx";

export interface SaveCheckButtonProps {
  readonly checks: readonly StoredCheck[];
  readonly label: string;
  readonly look?: ButtonLook;
  readonly wide?: boolean;
}

/** Saves checks as files, one after another, and says where one was not saved after all. */
export function SaveCheckButton({
  checks,
  label,
  look = "plain",
  wide = false,
}: SaveCheckButtonProps) {
  const [fault, setFault] = useState<Fault | null>(null);
  const save = async () => {
    let last: Fault | null = null;
    // Two share sheets can't be open at once.
    for (const stored of checks) last = (await saveCheckFile(stored)) ?? last;
    setFault(last);
  };
  return (
    <>
      <Button look={look} wide={wide} icon="file" onClick={save}>
        {label}
      </Button>
      {fault && <FaultNotice fault={fault} />}
    </>
  );
}

import { useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import * as messages from "../../words/compiled/screens/parts.ts";
import { Button, type ButtonLook } from "./Button.tsx";
import { FaultNotice } from "./FaultNotice.tsx";
import { canPrint, printPage } from "./printing.ts";
import { savePage } from "./savePage.ts";

export interface PrintButtonProps {
  /** What is printed, or saved where nothing can be: "labels". */
  readonly what: string;
  readonly look?: ButtonLook;
  readonly disabled?: boolean;
  readonly label?: string;
}

/** Prints the page; where there is no way to, saves it as a file that another device can print. */
export function PrintButton({
  what,
  look = "plain",
  disabled = false,
  label = messages.printWord,
}: PrintButtonProps) {
  const [fault, setFault] = useState<Fault | null>(null);
  return canPrint() ? (
    <Button look={look} disabled={disabled} onClick={printPage}>
      {label}
    </Button>
  ) : (
    <>
      <Button
        look={look}
        disabled={disabled}
        onClick={async () => setFault(await savePage(messages.stopfit2({ what })))}
      >
        {messages.save({ what })}
      </Button>
      {fault && <FaultNotice fault={fault} />}
    </>
  );
}

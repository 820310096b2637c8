import { useState } from "preact/hooks";
import * as messages from "../../../words/compiled/screens/answer/card.ts";
import { Button } from "../../parts/Button.tsx";
import { later } from "../../parts/later.tsx";
import type { CardDialogProps } from "./CardDialog.tsx";

const CardDialog = later<CardDialogProps>(
  async () => (await import("./CardDialog.tsx")).CardDialog,
);

/** One tap makes the result a picture and a page to show and send. */
export function CardButton(props: Omit<CardDialogProps, "onLeave">) {
  const [open, setOpen] = useState(false);
  if (open) return <CardDialog {...props} onLeave={() => setOpen(false)} />;
  return (
    <Button icon="camera" onClick={() => setOpen(true)}>
      {messages.makeCardToShow}
    </Button>
  );
}

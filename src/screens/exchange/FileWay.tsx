import { useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { said } from "../../saying/texts.ts";
import { downloadFile, fileToShare, type TextFile } from "../../sharing/checkFile.ts";
import { whereSaved } from "../../sharing/saveFile.ts";
import { canShareFile, share } from "../../sharing/shareFile.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";

function sizeText(bytes: number): string {
  return bytes < 1_000_000
    ? `${Math.max(1, Math.round(bytes / 1000))} kB`
    : `${(bytes / 1e6).toFixed(1)} MB`;
}

/** One file: by the share sheet where the device has one, and by saving everywhere. */
export function FileWay({
  text,
  title,
  words,
  onSent,
}: {
  text: TextFile;
  /** Of what is shared: "Fitment check: Marlow 4-door utility". */
  title: string;
  /** What is in it, and how it is opened. */
  words: string;
  onSent?: (() => void) | undefined;
}) {
  const file = useMemo(() => fileToShare(text), [text]);
  const shareable = useMemo(() => canShareFile(file), [file]);
  const [done, setDone] = useState("");
  const [fault, setFault] = useState<Fault | null>(null);

  const shareIt = async () => {
    setFault(null);
    setDone("");
    const outcome = await share({ files: [file], title });
    if (!outcome.ok) setFault(outcome.fault);
    else if (outcome.value === "handed over") {
      setDone(messages.fileWasHandedTo);
      onSent?.();
    }
  };

  const saveIt = async () => {
    setFault(null);
    setDone("");
    try {
      if (!(await downloadFile(text))) return;
      setDone(messages.fileIsReady({ whereSaved: said(whereSaved()) }));
      onSent?.();
    } catch {
      setFault({
        code: "notSaved",
        sentence: [messages.browserDidNotSave],
      });
    }
  };

  return (
    <>
      <p>
        {words} <span class="soft">{messages.about({ size: sizeText(file.size) })}</span>
      </p>
      <div class="send-buttons">
        {shareable && (
          <Button look="main" icon="file" onClick={shareIt}>
            {messages.shareFile}
          </Button>
        )}
        <Button look={shareable ? "plain" : "main"} icon="file" onClick={saveIt}>
          {messages.saveFile}
        </Button>
      </div>
      {done && <p role="status">{done}</p>}
      {fault && <FaultNotice fault={fault} />}
    </>
  );
}

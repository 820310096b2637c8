import { useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { copyText } from "../../sharing/shareFile.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";

/** In the browser of an Apple phone, where a tapped link opens though the checks may be in the app. */
export function ToInstalledApp({ link }: { link: string }) {
  const [copied, setCopied] = useState(false);
  const [fault, setFault] = useState<Fault | null>(null);
  const copy = async () => {
    const outcome = await copyText(link);
    setCopied(outcome.ok);
    setFault(outcome.ok ? null : outcome.fault);
  };
  return (
    <Notice tone="info">
      <p>
        <strong>{messages.isStopfitOnYour}</strong> {messages.copyLinkAndPaste}
      </p>
      <div class="row">
        <Button icon="copy" onClick={copy}>
          {messages.copyLink}
        </Button>
      </div>
      {copied && <p role="status">{messages.linkIsCopied}</p>}
      {fault && (
        <>
          <FaultNotice fault={fault} />
          <textarea class="link-text" readOnly rows={4} value={link} aria-label={messages.link} />
        </>
      )}
    </Notice>
  );
}

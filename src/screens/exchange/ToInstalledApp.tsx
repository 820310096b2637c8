import { useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { copyText } from "../../sharing/shareFile.ts";
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
        <strong>Is Stopfit on your home screen?</strong> Copy the link and paste it there, under
        “Open a link or a code”. Your checks of that app can't be seen here.
      </p>
      <div class="row">
        <Button icon="copy" onClick={copy}>
          Copy the link
        </Button>
      </div>
      {copied && <p role="status">The link is copied.</p>}
      {fault && (
        <>
          <FaultNotice fault={fault} />
          <textarea class="link-text" readOnly rows={4} value={link} aria-label="Link" />
        </>
      )}
    </Notice>
  );
}

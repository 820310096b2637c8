import { useId, useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { canShareLink, copyText, share } from "../../sharing/shareFile.ts";
import { appAddress, shareLink } from "../../sharing/shareLink.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";
import { PhotosLeftOut } from "./PhotosLeftOut.tsx";

/** The check as a link that holds it whole. */
export function LinkWay({
  record,
  onSent,
}: {
  record: CheckRecord;
  onSent: (() => void) | undefined;
}) {
  const id = useId();
  const link = useMemo(() => shareLink(record, appAddress(location)), [record]);
  const [done, setDone] = useState("");
  const [fault, setFault] = useState<Fault | null>(null);
  if (!link.ok) return <FaultNotice fault={link.fault} />;
  const { address, photosLeftOut, long } = link.value;

  const start = () => {
    setFault(null);
    setDone("");
  };
  const copyIt = async () => {
    start();
    const outcome = await copyText(address);
    if (outcome.ok) setDone("The link is copied. Paste it into a message.");
    else setFault(outcome.fault);
  };
  const shareIt = async () => {
    start();
    const outcome = await share({ url: address, title: `Fitment check: ${record.vehicle.label}` });
    if (!outcome.ok) setFault(outcome.fault);
    else if (outcome.value === "handed over") {
      setDone("The link was handed to what you chose.");
      if (photosLeftOut === 0) onSent?.();
    }
  };

  return (
    <>
      <p>
        The check is in the link itself; no server holds it. Whoever has the link can open the check
        and read the names and contact details in it.
      </p>
      <PhotosLeftOut count={photosLeftOut} way="link" />
      {long && (
        <Notice tone="care">
          <p>
            This link is {address.length.toLocaleString("en-GB")} characters long, and some programs
            for messages cut links that long. A cut link says so when it is opened; the file is the
            safer way.
          </p>
        </Notice>
      )}
      <div class="send-buttons">
        <Button look="main" icon="copy" onClick={copyIt}>
          Copy the link
        </Button>
        {canShareLink(address) && <Button onClick={shareIt}>Share the link</Button>}
      </div>
      {done && <p role="status">{done}</p>}
      {fault && <FaultNotice fault={fault} />}
      <Disclosure summary="Show the link" open={fault?.code === "copyRefused"}>
        <label class="field" for={id}>
          <span class="field-label">Link to this check</span>
          <textarea
            id={id}
            class="link-text"
            readOnly
            rows={5}
            value={address}
            onFocus={(event) => event.currentTarget.select()}
          />
        </label>
      </Disclosure>
    </>
  );
}

import type { ComponentChildren } from "preact";
import { useId, useMemo, useState } from "preact/hooks";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { canShareLink, copyText, share } from "../../sharing/shareFile.ts";
import { appAddress, linkOfPacked, type Packed } from "../../sharing/shareLink.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { language } from "../../words/language.ts";
import { Button } from "../parts/Button.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";
import { Notice } from "../parts/Notice.tsx";
import { PhotosLeftOut } from "./PhotosLeftOut.tsx";

/** What was packed as a link that holds it whole. */
export function LinkWay({
  packed,
  label,
  title,
  words,
  toMaker,
  onSent,
}: {
  packed: Outcome<Packed>;
  /** Of the field that shows it: "Link to this check". */
  label: string;
  /** Of what is shared: "Fitment check: Marlow 4-door utility". */
  title: string;
  /** What the link holds, and for whom. */
  words: string;
  /** To whom the link goes, where that is known. */
  toMaker?: (link: string) => ComponentChildren;
  onSent?: (() => void) | undefined;
}) {
  const id = useId();
  const link = useMemo(() => linkOfPacked(packed, appAddress(location)), [packed]);
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
    if (outcome.ok) setDone(messages.linkIsCopiedPaste);
    else setFault(outcome.fault);
  };
  const shareIt = async () => {
    start();
    const outcome = await share({ url: address, title });
    if (!outcome.ok) setFault(outcome.fault);
    else if (outcome.value === "handed over") {
      setDone(messages.linkWasHandedTo);
      if (photosLeftOut === 0) onSent?.();
    }
  };

  return (
    <>
      <p>{words}</p>
      <PhotosLeftOut count={photosLeftOut} way="link" />
      {long && (
        <Notice tone="care">
          <p>
            {messages.thisLinkIsCharacters({ address: address.length.toLocaleString(language) })}
          </p>
        </Notice>
      )}
      <div class="send-buttons">
        <Button look="main" icon="copy" onClick={copyIt}>
          {messages.copyLink}
        </Button>
        {canShareLink(address) && <Button onClick={shareIt}>{messages.shareLink}</Button>}
      </div>
      {toMaker?.(address)}
      {done && <p role="status">{done}</p>}
      {fault && <FaultNotice fault={fault} />}
      <Disclosure summary={messages.showLink} open={fault?.code === "copyRefused"}>
        <label class="field" for={id}>
          <span class="field-label">{label}</span>
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

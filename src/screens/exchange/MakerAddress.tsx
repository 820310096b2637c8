import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { makerWays } from "../../records/pack/makerWays.ts";
import { mailto } from "../../records/text/mailto.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { useReferencePack } from "../referencePack.ts";

/** To whom a file or a link goes, by the parts library; nothing where it does not say. */
export function MakerAddress({
  record: { vehicle, axle },
  link,
}: {
  record: CheckRecord;
  /** The link to this check, where that is sent; absent: the file, which is attached by hand. */
  link?: string | undefined;
}) {
  const { maker } = useReferencePack();
  const { mail, phone, post } = makerWays(maker ?? {});
  if (!maker || (mail ?? phone ?? post) === null) return null;
  const name = maker.name.trim() || messages.maker;
  const subject = messages.fitmentCheckAxle({ label: vehicle.label, axle });
  const text = link && messages.myCheckToBe({ link });
  const written = mail && (mailto(mail, subject, text) ?? mailto(mail, subject));
  return (
    <div class="stack-close">
      <p class="small">
        {mail ? (
          <>
            {link === undefined ? messages.attachFileToMail : messages.mailLinkTo} {name}:{" "}
            <bdi>{mail}</bdi>
          </>
        ) : phone ? (
          <>
            {messages.hasNoEMail({ name })} <bdi>{phone}</bdi>
          </>
        ) : (
          <>
            {messages.hasNoEMailHere({ name })} <bdi>{post}</bdi>
            {messages.askThereFirst}
          </>
        )}
      </p>
      {written && (
        <div class="row">
          <ButtonLink href={written}>{messages.writeMail}</ButtonLink>
        </div>
      )}
    </div>
  );
}

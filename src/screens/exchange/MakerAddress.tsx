import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { makerWays } from "../../records/pack/makerWays.ts";
import { mailto } from "../../records/text/mailto.ts";
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
  const name = maker.name.trim() || "the maker";
  const subject = `Fitment check: ${vehicle.label}, ${axle} axle`;
  const text = link && `My check, to be opened in Stopfit:\n${link}\n`;
  const written = mail && (mailto(mail, subject, text) ?? mailto(mail, subject));
  return (
    <div class="stack-close">
      <p class="small">
        {mail ? (
          <>
            {link === undefined ? "Attach the file to a mail to" : "Mail the link to"} {name}:{" "}
            <bdi>{mail}</bdi>
          </>
        ) : phone ? (
          <>
            {name} has no e-mail here. Call and ask where to send it: <bdi>{phone}</bdi>
          </>
        ) : (
          <>
            {name} has no e-mail here, only a postal address: <bdi>{post}</bdi>. Ask there first.
          </>
        )}
      </p>
      {written && (
        <div class="row">
          <ButtonLink href={written}>Write the mail</ButtonLink>
        </div>
      )}
    </div>
  );
}

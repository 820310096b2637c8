import { useEffect, useMemo, useState } from "preact/hooks";
import type { Fault } from "../../../physics/outcome.ts";
import { capital, type Sentence, type Words } from "../../../physics/sentence.ts";
import type { CheckRecord } from "../../../records/check/checkRecord.ts";
import { recordBounds } from "../../../records/check/recordFormat.ts";
import type { Pack } from "../../../records/pack/pack.ts";
import { inModelUnits } from "../../../saying/modelUnits.ts";
import type { SentCheck } from "../../../storage/outboxStore.ts";
import * as messages from "../../../words/compiled/screens/exchange/maker.ts";
import { language } from "../../../words/language.ts";
import { Button } from "../../parts/Button.tsx";
import { FaultNotice } from "../../parts/FaultNotice.tsx";
import { TextField } from "../../parts/Field.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { changePreferences, preferences } from "../../preferences.ts";
import { useReferencePack } from "../../referencePack.ts";
import { authorNow } from "../../storedPreferences.ts";
import { beginOutbox, outbox, sendToDesk, wholeHash } from "./outboxRun.ts";
import { openAnswer } from "./sentList.ts";

/** Whom a check goes to, by the parts library. */
function makerName({ maker }: Pick<Pack, "maker">): string {
  return maker?.name.trim() || messages.maker;
}

export interface MakerWayProps {
  readonly record: CheckRecord;
  readonly onSent: (() => void) | undefined;
}

/** Straight to the maker's desk: kept here until it is there, and the answer comes back by itself. */
export function MakerWay({ record, onSent }: MakerWayProps) {
  const maker = makerName(useReferencePack());
  // Asked once: a check that names nobody goes from who sent or measured last on this phone.
  const [name, setName] = useState(
    () => record.author.name ?? authorNow(preferences())?.name ?? "",
  );
  const [contact, setContact] = useState(
    () => record.author.contact ?? authorNow(preferences())?.contact ?? "",
  );
  const [fault, setFault] = useState<Fault | null>(null);
  const outgoing = useMemo((): CheckRecord => {
    const { name: _name, contact: _contact, ...author } = record.author;
    const [who, way] = [name.trim(), contact.trim()];
    return {
      ...record,
      author: { ...author, ...(who && { name: who }), ...(way && { contact: way }) },
    };
  }, [record, name, contact]);
  const { sent, trouble, same } = useSentCheck(outgoing);

  const send = async () => {
    setFault(null);
    changePreferences({ author: outgoing.author, authorAt: new Date().toISOString() });
    const queued = await sendToDesk(outgoing);
    if (queued.ok) onSent?.();
    else setFault(queued.fault);
  };

  const photos = record.photos?.length ?? 0;
  return (
    <>
      {sent && <SentAs sent={sent} same={same} trouble={trouble} maker={maker} />}
      {(!sent || !same) && (
        <>
          <p>{messages.goesToReadingsAnd({ maker, hasPhotos: photos > 0, photos })}</p>
          <TextField
            label={messages.yourName}
            value={name}
            onInput={setName}
            maxLength={recordBounds.labelCharacters}
            capitals
          />
          <TextField
            label={messages.mailOrPhoneIf}
            value={contact}
            onInput={setContact}
            maxLength={recordBounds.labelCharacters}
          />
          <div class="send-buttons">
            <Button look="main" icon="forward" disabled={contact.trim() === ""} onClick={send}>
              {sent ? messages.sendThisVersionTo({ maker }) : messages.sendTo({ maker })}
            </Button>
          </div>
          {contact.trim() === "" && <p class="small soft">{messages.giveMailAddressOr}</p>}
        </>
      )}
      {fault && <FaultNotice fault={fault} />}
      <p class="small soft">{messages.withoutSignalItWaits}</p>
    </>
  );
}

function SentAs({
  sent: { state, newest, versions, reply },
  same,
  trouble,
  maker,
}: {
  sent: SentCheck;
  same: boolean;
  trouble: Words | Sentence | null;
  maker: string;
}) {
  const version = versions > 1 ? messages.version({ versions }) : "";
  const words = {
    waiting: messages.waitsOnThisPhone({ version }),
    received: messages.receivedByNoAnswer({ version, maker, time: timeText(newest.receivedAt) }),
    answered: messages.versionAnswered({ version }),
  };
  const said = words[state];
  return (
    <>
      <Notice tone={state === "waiting" ? "care" : "ok"} live>
        <p data-sent={state}>{capital(said)}</p>
        {state === "waiting" && trouble && <p>{inModelUnits(trouble)}</p>}
        {reply && (
          <div class="row">
            <Button onClick={() => openAnswer(reply)}>{messages.readAnswer}</Button>
          </div>
        )}
      </Notice>
      {!same && <p>{messages.itWasChangedSince}</p>}
    </>
  );
}

function timeText(iso = ""): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime())
    ? ""
    : date.toLocaleString(language, { dateStyle: "medium", timeStyle: "short" });
}

function useSentCheck(record: CheckRecord) {
  const [sent, setSent] = useState<SentCheck | null>(null);
  const [trouble, setTrouble] = useState<Words | Sentence | null>(null);
  const [whole, setWhole] = useState<string | null>(null);
  const id = record.id;
  useEffect(() => {
    let left = false;
    wholeHash(record).then((hash) => !left && setWhole(hash));
    return () => {
      left = true;
    };
  }, [record]);
  useEffect(() => {
    let left = false;
    const store = outbox();
    const look = async () => {
      const [all, kept] = await Promise.all([store.sent(), store.trouble()]);
      if (left) return;
      if (all.ok) setSent(all.value.get(id) ?? null);
      setTrouble(kept);
    };
    look();
    const stop = store.subscribe(look);
    beginOutbox();
    return () => {
      left = true;
      stop();
    };
  }, [id]);
  return { sent, trouble, same: sent !== null && (whole === null || sent.newest.whole === whole) };
}

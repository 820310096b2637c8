import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { checkFile } from "../../sharing/checkFile.ts";
import { packCheck, packCheckForCode } from "../../sharing/shareLink.ts";
import * as messages from "../../words/compiled/screens/exchange.ts";
import { filled } from "../filled.ts";
import { Button } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { later } from "../parts/later.tsx";
import { CodeWay } from "./CodeWay.tsx";
import { FileWay } from "./FileWay.tsx";
import { LinkWay } from "./LinkWay.tsx";
import { MakerAddress } from "./MakerAddress.tsx";
import type { MakerWayProps } from "./maker/MakerWay.tsx";
import "./exchange.css";

type Way = "maker" | "file" | "link" | "code";

/** Only where the build names a desk is there anything of it in the app. */
const MakerWay = import.meta.env.VITE_DESK
  ? later<MakerWayProps>(async () => (await import("./maker/MakerWay.tsx")).MakerWay)
  : null;

const ways: readonly { readonly value: Way; readonly name: string }[] = [
  ...(MakerWay ? [{ value: "maker" as const, name: messages.toMaker }] : []),
  { value: "file", name: messages.file },
  { value: "link", name: messages.link },
  { value: "code", name: messages.code },
];

export interface SendSheetProps {
  readonly record: CheckRecord;
  readonly unit: LengthUnit;
  onLeave(): void;
  /** Called each time it has left this device, as far as that can be known. */
  onSent?(): void;
}

function contents(record: CheckRecord): string {
  const photos = record.photos?.length ?? 0;
  if (photos === 0) return messages.everythingInOneFile;
  return photos === 1
    ? messages.everythingInOneFilePhoto
    : messages.everythingInOneFilePhotos({ photos });
}

/** How one check leaves this device: to the maker, as a file, a link or a code, the same check by each. */
export default function SendSheet({ record, onLeave, onSent }: SendSheetProps) {
  const id = useId();
  const sheet = useRef<HTMLDialogElement>(null);
  const [way, setWay] = useState<Way>(MakerWay ? "maker" : "file");
  const packed = useMemo(() => packCheck(record), [record]);
  const forCode = useMemo(() => packCheckForCode(record), [record]);
  const file = useMemo(() => checkFile(record), [record]);
  const title = messages.fitmentCheck({ label: record.vehicle.label });
  useEffect(() => {
    const element = sheet.current;
    if (element && !element.open) element.showModal();
  }, []);
  return (
    <dialog
      ref={sheet}
      class="send-sheet"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      <div class="send-top">
        <h2 id={id}>{messages.sendThisCheck}</h2>
        <Button look="quiet" icon="cross" label={messages.closeWord} onClick={onLeave} />
      </div>
      <div class="send-body">
        <p class="send-what">
          {filled(messages.axle2, {
            label: <strong>{record.vehicle.label}</strong>,
            axle: record.axle,
          })}{" "}
          <span class="soft">{messages.itGoesOnlyWhere}</span>
        </p>
        <Segmented
          legend={messages.sendAs}
          legendUnseen
          options={ways}
          value={way}
          onChange={setWay}
        />
        {way === "maker" && MakerWay && <MakerWay record={record} onSent={onSent} />}
        {way === "file" && (
          <>
            <FileWay
              text={file}
              title={title}
              words={messages.itOpensInStopfit({ contents: contents(record) })}
              onSent={onSent}
            />
            <MakerAddress record={record} />
          </>
        )}
        {way === "link" && (
          <LinkWay
            packed={packed}
            label={messages.linkToThisCheck}
            title={title}
            words={messages.checkIsInLink}
            toMaker={(link) => <MakerAddress record={record} link={link} />}
            onSent={onSent}
          />
        )}
        {way === "code" && (
          <>
            {record.advised && <p class="small soft">{messages.whatStopfitAdvisedIs}</p>}
            <CodeWay packed={forCode} />
          </>
        )}
      </div>
    </dialog>
  );
}

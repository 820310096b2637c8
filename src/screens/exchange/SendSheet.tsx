import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { checkFile } from "../../sharing/checkFile.ts";
import { packCheck, packCheckForCode } from "../../sharing/shareLink.ts";
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
  ...(MakerWay ? [{ value: "maker" as const, name: "To the maker" }] : []),
  { value: "file", name: "File" },
  { value: "link", name: "Link" },
  { value: "code", name: "Code" },
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
  if (photos === 0) return "Everything in one file.";
  return photos === 1
    ? "Everything in one file, the photo too."
    : `Everything in one file, the ${photos} photos too.`;
}

/** How one check leaves this device: to the maker, as a file, a link or a code, the same check by each. */
export default function SendSheet({ record, onLeave, onSent }: SendSheetProps) {
  const id = useId();
  const sheet = useRef<HTMLDialogElement>(null);
  const [way, setWay] = useState<Way>(MakerWay ? "maker" : "file");
  const packed = useMemo(() => packCheck(record), [record]);
  const forCode = useMemo(() => packCheckForCode(record), [record]);
  const file = useMemo(() => checkFile(record), [record]);
  const title = `Fitment check: ${record.vehicle.label}`;
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
        <h2 id={id}>Send this check</h2>
        <Button look="quiet" icon="cross" label="Close" onClick={onLeave} />
      </div>
      <div class="send-body">
        <p class="send-what">
          <strong>{record.vehicle.label}</strong>, {record.axle} axle.{" "}
          <span class="soft">It goes only where you send it.</span>
        </p>
        <Segmented legend="Send as" legendUnseen options={ways} value={way} onChange={setWay} />
        {way === "maker" && MakerWay && <MakerWay record={record} onSent={onSent} />}
        {way === "file" && (
          <>
            <FileWay
              text={file}
              title={title}
              words={`${contents(record)} It opens in Stopfit on any device: choose “Open a file” there.`}
              onSent={onSent}
            />
            <MakerAddress record={record} />
          </>
        )}
        {way === "link" && (
          <LinkWay
            packed={packed}
            label="Link to this check"
            title={title}
            words="The check is in the link itself; no server holds it. Whoever has the link can open the check and read the names and contact details in it."
            toMaker={(link) => <MakerAddress record={record} link={link} />}
            onSent={onSent}
          />
        )}
        {way === "code" && (
          <>
            {record.advised && (
              <p class="small soft">
                What Stopfit advised is not in the code. The other side works it out again.
              </p>
            )}
            <CodeWay packed={forCode} />
          </>
        )}
      </div>
    </dialog>
  );
}

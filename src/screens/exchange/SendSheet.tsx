import { useEffect, useId, useRef, useState } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
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

/** How one check leaves this device: to the maker, as a file, a link or a code, the same check by each. */
export default function SendSheet({ record, onLeave, onSent }: SendSheetProps) {
  const id = useId();
  const sheet = useRef<HTMLDialogElement>(null);
  const [way, setWay] = useState<Way>(MakerWay ? "maker" : "file");
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
        {way === "file" && <FileWay record={record} onSent={onSent} />}
        {(way === "file" || way === "link") && <MakerAddress />}
        {way === "link" && <LinkWay record={record} onSent={onSent} />}
        {way === "code" && <CodeWay record={record} />}
      </div>
    </dialog>
  );
}

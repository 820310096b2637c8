import { useMemo, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { downloadCheck, fileToShare } from "../../sharing/checkFile.ts";
import { whereSaved } from "../../sharing/saveFile.ts";
import { canShareFile, share } from "../../sharing/shareFile.ts";
import { Button } from "../parts/Button.tsx";
import { FaultNotice } from "../parts/FaultNotice.tsx";

function sizeText(bytes: number): string {
  return bytes < 1_000_000
    ? `${Math.max(1, Math.round(bytes / 1000))} kB`
    : `${(bytes / 1e6).toFixed(1)} MB`;
}

function contents(record: CheckRecord): string {
  const photos = record.photos?.length ?? 0;
  if (photos === 0) return "Everything in one file.";
  return photos === 1
    ? "Everything in one file, the photo too."
    : `Everything in one file, the ${photos} photos too.`;
}

/** The check as one file: by the share sheet where the device has one, and by saving everywhere. */
export function FileWay({
  record,
  onSent,
}: {
  record: CheckRecord;
  onSent: (() => void) | undefined;
}) {
  const file = useMemo(() => fileToShare(record), [record]);
  const shareable = useMemo(() => canShareFile(file), [file]);
  const [done, setDone] = useState("");
  const [fault, setFault] = useState<Fault | null>(null);

  const shareIt = async () => {
    setFault(null);
    setDone("");
    const outcome = await share({ files: [file], title: `Fitment check: ${record.vehicle.label}` });
    if (!outcome.ok) setFault(outcome.fault);
    else if (outcome.value === "handed over") {
      setDone("The file was handed to what you chose.");
      onSent?.();
    }
  };

  const saveIt = () => {
    setFault(null);
    setDone("");
    try {
      downloadCheck(record);
      setDone(`The file is ready. ${whereSaved()}`);
      onSent?.();
    } catch {
      setFault({
        code: "notSaved",
        sentence: ["The browser did not save the file. Send the check as a link instead."],
      });
    }
  };

  return (
    <>
      <p>
        {contents(record)} It opens in Stopfit on any device: choose “Open a file” there.{" "}
        <span class="soft">About {sizeText(file.size)}.</span>
      </p>
      <div class="send-buttons">
        {shareable && (
          <Button look="main" icon="file" onClick={shareIt}>
            Share the file
          </Button>
        )}
        <Button look={shareable ? "plain" : "main"} icon="file" onClick={saveIt}>
          Save the file
        </Button>
      </div>
      {done && <p role="status">{done}</p>}
      {fault && <FaultNotice fault={fault} />}
    </>
  );
}

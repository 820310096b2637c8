import { useState } from "preact/hooks";
import type { CheckRecord } from "../../../records/checkRecord.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";

/** The check as a file that another phone, the desk or `assess` can read. */
export function SaveRecord({ record }: { record: CheckRecord }) {
  const [failed, setFailed] = useState(false);
  const save = async () => {
    setFailed(false);
    try {
      const { downloadCheck } = await import("../../../sharing/checkFile.ts");
      downloadCheck(record);
    } catch {
      setFailed(true);
    }
  };
  return (
    <>
      <Button look="main" icon="file" onClick={save}>
        Save as a file
      </Button>
      {failed && (
        <Notice tone="no" live>
          <p>The file could not be made. Try again, or copy the check from the list.</p>
        </Notice>
      )}
    </>
  );
}

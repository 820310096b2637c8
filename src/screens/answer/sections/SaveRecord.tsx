import { useState } from "preact/hooks";
import type { CheckRecord } from "../../../records/checkRecord.ts";
import { downloadCheck } from "../../../sharing/checkFile.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";

/** The check as a file that another phone, the desk or `assess` can read. */
export function SaveRecord({ record }: { record: CheckRecord }) {
  const [failed, setFailed] = useState(false);
  const save = () => {
    try {
      downloadCheck(record);
      setFailed(false);
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
          <p>This browser did not save the file. The check itself is kept in the list.</p>
        </Notice>
      )}
    </>
  );
}

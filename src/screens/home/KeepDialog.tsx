import { checkName, dateText } from "../../records/check/checkName.ts";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { cleanName } from "../../records/text/soundText.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { jobWords } from "../job/jobWords.ts";
import { Button } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { Notice } from "../parts/Notice.tsx";
import type { OpenedFiles } from "./openFiles.ts";

export interface KeepDialogProps {
  readonly files: OpenedFiles;
  readonly present: readonly ListedCheck[];
  readonly onLeave: () => void;
  readonly onKeep: (checks: readonly StoredCheck[]) => void;
}

/** What the opened files hold, asked before anything is stored. */
export function KeepDialog({ files, present, onLeave, onKeep }: KeepDialogProps) {
  const { checks, refused, replies, backup } = files;
  const count = checks.length;
  return (
    <Dialog
      heading={
        count === 0
          ? messages.nothingToSave
          : count === 1
            ? messages.saveThisCheckOn
            : messages.saveTheseChecksOn({ count })
      }
      onLeave={onLeave}
      actions={
        count === 0 ? (
          <Button look="main" onClick={onLeave}>
            {messages.closeWord}
          </Button>
        ) : (
          <>
            <Button onClick={onLeave}>{messages.dontSave}</Button>
            <Button look="main" onClick={() => onKeep(checks)}>
              {messages.save}
            </Button>
          </>
        )
      }
    >
      {count > 0 && (
        <ul class="stack-close keep-list">
          {checks.map((check) => (
            <li key={check.id}>
              <strong>
                <bdi>{said(checkName(check))}</bdi>
              </strong>{" "}
              <span class="small soft">
                {dateText(check.createdAt)}
                {check.record.job && ` · ${jobWords(check.record.job)}`}
                {check.progress.step === "answer" ? "" : messages.notComplete}
                {present.some(({ id }) => id === check.id) && messages.alreadyHereThisOne}
              </span>
            </li>
          ))}
        </ul>
      )}
      {replies.length > 0 && <p>{messages.replyCame({ replies: replies.length })}</p>}
      {backup && (
        <p>
          <bdi>{cleanName(backup.name, 80)}</bdi> {messages.isBackupWhatIs}
        </p>
      )}
      {refused.map(({ file, sentence }, index) => (
        <Notice key={`${file} ${index}`} tone="no">
          <p>
            <strong>
              <bdi>{file}</bdi>
            </strong>
            : {inModelUnits(sentence)}
          </p>
        </Notice>
      ))}
    </Dialog>
  );
}

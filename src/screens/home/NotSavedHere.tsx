import type { Sentence } from "../../physics/sentence.ts";
import { checkName } from "../../records/check/checkName.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { inModelUnits } from "../../saying/modelUnits.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/home.ts";
import { Button } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { SaveCheckButton } from "../SaveCheckButton.tsx";

export interface NotSavedHereProps {
  readonly unkept: readonly StoredCheck[];
  /** Why the last try failed. */
  readonly sentence: Sentence | null;
  readonly onTryAgain: () => void;
}

/** Checks whose last readings are only in this page: why, and what to do before it is closed. */
export function NotSavedHere({ unkept, sentence, onTryAgain }: NotSavedHereProps) {
  const names = unkept.map((stored) => said(checkName(stored))).join(", ");
  return (
    <Notice tone="no" live>
      <p>
        <strong>{messages.notSaved({ names })}</strong> {messages.lastReadingsAreOnly}
      </p>
      {sentence && <p>{inModelUnits(sentence)}</p>}
      <div class="row">
        <SaveCheckButton
          checks={unkept}
          look="main"
          label={unkept.length === 1 ? messages.saveAsFile : messages.saveAsFiles}
        />
        <Button onClick={onTryAgain}>{messages.tryAgain}</Button>
      </div>
    </Notice>
  );
}

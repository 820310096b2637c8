import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import type { KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { Button } from "../parts/Button.tsx";
import { Icon } from "../parts/Icon.tsx";
import { Notice } from "../parts/Notice.tsx";
import { SaveCheckButton } from "../SaveCheckButton.tsx";

/** In the top row: whether what is typed is on this phone. */
export function SavedLine({ kept }: { kept: KeepState }) {
  if (kept === "kept") {
    return (
      <span class="saved-line" role="status">
        <Icon name="tick" size={16} /> {messages.saved}
      </span>
    );
  }
  if (kept === "keeping") {
    return (
      <span class="saved-line" role="status">
        {messages.saving}
      </span>
    );
  }
  return (
    <span class="saved-line saved-not" role="status">
      <Icon name="cross" size={16} /> {messages.notSaved}
    </span>
  );
}

/** Why it is not kept, and the file in its place. Nothing where it is kept. */
export function NotSaved({
  kept,
  stored,
  tryAgain,
}: {
  kept: KeepState;
  stored: StoredCheck;
  tryAgain: () => void;
}) {
  if (typeof kept === "string") return null;
  return (
    <Notice tone="no" live>
      <p>{sentenceText(kept.notKept, "mm")}</p>
      <div class="row">
        <SaveCheckButton checks={[stored]} look="main" label={messages.saveAsFile} />
        <Button onClick={tryAgain}>{messages.tryAgain}</Button>
      </div>
    </Notice>
  );
}

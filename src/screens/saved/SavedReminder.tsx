import { useState } from "preact/hooks";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { said } from "../../saying/texts.ts";
import { whereSaved } from "../../sharing/saveFile.ts";
import { isBrowserOnApple, isInstalled } from "../../sharing/thisDevice.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Notice } from "../parts/Notice.tsx";
import { BackupButton } from "./BackupButton.tsx";
import { sizeText } from "./persistence.ts";
import { countBefore } from "./savedCount.ts";
import { savedHref, savedName } from "./savedRoute.ts";
import { checksText, onlyHereText, safekeepingWords } from "./savedWords.ts";
import { type Keeping, useKeeping } from "./useKeeping.ts";

export interface SavedReminderProps {
  readonly store: CheckStore;
  readonly checks: readonly ListedCheck[];
  readonly deleted: number;
}

function whyNow({ persistence, low, space, onlyHere }: Keeping): string {
  if (low && space) {
    return messages.thisPhoneIsShort({ size: sizeText(space.freeBytes) });
  }
  const checks = onlyHere.length;
  if (isBrowserOnApple()) {
    return messages.thisBrowserDeletesAfter({ checks });
  }
  return persistence === "unknown"
    ? messages.thisBrowserDoesNot({ checks })
    : messages.thisBrowserMayClear({ checks });
}

/** On the list: that checks are nowhere else while the browser may clear them, or that it has. */
export function SavedReminder({ store, checks, deleted }: SavedReminderProps) {
  const { keeping, lookAgain } = useKeeping(checks);
  const [saved, setSaved] = useState(false);
  const cleared = checks.length + deleted === 0 ? countBefore() : null;

  if (cleared) {
    return (
      <Notice tone="care" live>
        <p>{messages.thereWas1Check({ cleared, checks: checksText(cleared) })}</p>
        <div class="row">
          <ButtonLink look="main" href={savedHref}>
            {messages.restoreBackup}
          </ButtonLink>
        </div>
      </Notice>
    );
  }
  const atRisk = keeping && (keeping.persistence !== "kept" || keeping.low);
  if (saved) {
    return (
      <Notice tone="ok" live>
        <p>{messages.backupIsReady({ whereSaved: said(whereSaved()) })}</p>
      </Notice>
    );
  }
  // Not while the first check is still being measured: there is nothing to save yet.
  const complete = keeping?.onlyHere.some(({ lastVerdict }) => lastVerdict !== undefined);
  if (!atRisk || !complete) return null;
  const { tone } = safekeepingWords(keeping.low ? "mayEvict" : keeping.persistence, {
    inAppleBrowser: isBrowserOnApple(),
    installed: isInstalled(),
  });
  return (
    <Notice tone={tone} live>
      <p>
        {onlyHereText(keeping.onlyHere.length)} {whyNow(keeping)}
      </p>
      <div class="row">
        <BackupButton
          store={store}
          plain
          onSaved={() => {
            setSaved(true);
            lookAgain();
          }}
        />
        <ButtonLink look="quiet" href={savedHref} label={messages.why({ savedName })}>
          {messages.why2}
        </ButtonLink>
      </div>
    </Notice>
  );
}

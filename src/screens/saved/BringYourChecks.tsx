import * as messages from "../../words/compiled/screens/saved.ts";
import { ButtonLink } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { savedHref, savedName } from "./savedRoute.ts";

export interface BringYourChecksProps {
  readonly pasteHref: string;
}

/** On the empty list of an app just installed where it can't see what the browser has stored. */
export function BringYourChecks({ pasteHref }: BringYourChecksProps) {
  return (
    <Card heading={messages.bringYourChecks}>
      <p>{messages.thisAppHasStorage}</p>
      <ol class="numbered">
        <li>{messages.openStopfitInBrowser({ savedName })}</li>
        <li>{messages.tapSaveBackupAnd}</li>
        <li>{messages.comeBackHereAnd}</li>
      </ol>
      <p>{messages.forOneCheckCopy}</p>
      <div class="row">
        <ButtonLink look="main" href={savedHref}>
          {messages.restoreBackup}
        </ButtonLink>
        <ButtonLink href={pasteHref}>{messages.pasteLink}</ButtonLink>
      </div>
    </Card>
  );
}

import { ButtonLink } from "../parts/Button.tsx";
import { Card } from "../parts/Card.tsx";
import { savedHref, savedName } from "./savedRoute.ts";

export interface BringYourChecksProps {
  readonly pasteHref: string;
}

/** On the empty list of an app just installed where it can't see what the browser has stored. */
export function BringYourChecks({ pasteHref }: BringYourChecksProps) {
  return (
    <Card heading="Bring your checks">
      <p>
        This app has a storage of its own. Checks that you measured in the browser are still there.
      </p>
      <ol class="numbered">
        <li>Open Stopfit in the browser, then “{savedName}”.</li>
        <li>Tap “Save a backup” and save the file on this phone.</li>
        <li>Come back here and restore that file.</li>
      </ol>
      <p>For one check, copy its link in the browser and paste it here.</p>
      <div class="row">
        <ButtonLink look="main" href={savedHref}>
          Restore a backup
        </ButtonLink>
        <ButtonLink href={pasteHref}>Paste a link</ButtonLink>
      </div>
    </Card>
  );
}

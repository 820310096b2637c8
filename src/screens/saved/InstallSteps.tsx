import { isAppleMobile } from "../../sharing/thisDevice.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { BackupButton } from "./BackupButton.tsx";

/** How the app gets onto the home screen, and first of all what would not come along. */
export function InstallSteps({ store, checks }: { store: CheckStore; checks: number }) {
  const apple = isAppleMobile();
  return (
    <Disclosure summary={messages.howToInstallStopfit}>
      {apple && (
        <>
          <p>
            {messages.installedAppStartsEmpty}
            {checks > 0 && messages.saveBackupFirstAnd}
          </p>
          {checks > 0 && <BackupButton store={store} plain onSaved={() => undefined} />}
        </>
      )}
      <ol class="numbered">
        <li>{apple ? messages.openBrowsersShareMenu : messages.openBrowsersMenuAnd}</li>
        <li>{messages.openStopfitFromHome}</li>
        {apple && checks > 0 && <li>{messages.tapRestoreBackupThere}</li>}
      </ol>
    </Disclosure>
  );
}

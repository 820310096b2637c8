import { isAppleMobile } from "../../sharing/thisDevice.ts";
import type { CheckStore } from "../../storage/checkStore.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { BackupButton } from "./BackupButton.tsx";

/** How the app gets onto the home screen, and first of all what would not come along. */
export function InstallSteps({ store, checks }: { store: CheckStore; checks: number }) {
  const apple = isAppleMobile();
  return (
    <Disclosure summary="How to install Stopfit">
      {apple && (
        <>
          <p>
            The installed app starts empty: it can't see what this browser has stored.
            {checks > 0 && " Save a backup first, and restore it there."}
          </p>
          {checks > 0 && <BackupButton store={store} plain onSaved={() => undefined} />}
        </>
      )}
      <ol class="numbered">
        <li>
          {apple
            ? "Open the browser's share menu and choose “Add to Home Screen”."
            : "Open the browser's menu and choose “Install” or “Add to Home screen”."}
        </li>
        <li>Open Stopfit from the home screen.</li>
        {apple && checks > 0 && <li>Tap “Restore a backup” there and choose the file.</li>}
      </ol>
    </Disclosure>
  );
}

import type { PageMessage } from "./messages.ts";

/** A desk was opened here: from now on the service worker keeps what only desks need, too. */
export function keepFilesForDesks(): void {
  const message: PageMessage = { type: "deskOpened" };
  navigator.serviceWorker?.ready.then(
    ({ active }) => active?.postMessage(message),
    () => undefined,
  );
}

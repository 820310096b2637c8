import type { BegunImport } from "../../storage/deskDatabase.ts";
import * as messages from "../../words/compiled/screens/desk.ts";

const lockStart = "stopfit-desk-import ";

/** Why an import ends that goes on when the desk is opened again: nobody stopped it. */
export const deskLeft = messages.reviewDeskWasLeft;

/**
 * Held until the returned function is called, or the page is gone: so another tab knows that this import
 * still runs. Null: another tab holds it.
 */
export async function holdImport({ key }: BegunImport): Promise<(() => void) | null> {
  const { locks } = globalThis.navigator ?? {};
  if (!locks) return () => undefined;
  return new Promise((resolve) => {
    locks
      .request(`${lockStart}${key}`, { ifAvailable: true }, (lock) => {
        if (lock === null) {
          resolve(null);
          return undefined;
        }
        return new Promise<void>((letGo) => resolve(letGo));
      })
      .catch(() => resolve(null));
  });
}

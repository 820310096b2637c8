import { useEffect, useRef } from "preact/hooks";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import type { CheckStore } from "../../storage/checkStore.ts";

/** Nobody who opens a check at once waits behind the verdicts of the others, ms. */
const verdictDelay = 1500;

/** The verdicts that are still open are worked out once the list stands still. */
export function useVerdicts(
  store: CheckStore | null,
  checks: readonly ListedCheck[] | null,
  refresh: () => void,
) {
  // A verdict found changes neither, so that the work goes on through the list.
  const versions = checks?.map(({ id, updatedAt }) => `${id} ${updatedAt}`).join() ?? "";
  const latest = useRef(checks);
  latest.current = checks;
  useEffect(() => {
    if (!store || !versions) return;
    let left = false;
    let stop = (): void => undefined;
    const timer = setTimeout(async () => {
      const { findVerdicts } = await import("./findVerdicts.ts");
      if (!left) stop = findVerdicts(store, latest.current ?? [], refresh);
    }, verdictDelay);
    return () => {
      left = true;
      clearTimeout(timer);
      stop();
    };
  }, [store, versions, refresh]);
}

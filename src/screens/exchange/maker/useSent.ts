import { useEffect, useState } from "preact/hooks";
import type { ListedCheck } from "../../../records/check/listedCheck.ts";
import type { CheckStore } from "../../../storage/checkStore.ts";
import { isOutboxUsed } from "./outboxUsed.ts";
import type { Sent } from "./sent.ts";

const nothingSent: Sent = { words: new Map(), answers: [] };

/** What became of checks that were sent to the desk; nothing is loaded where there is none. */
export function useSent(store: CheckStore | null, checks: readonly ListedCheck[] | null): Sent {
  const [sent, setSent] = useState(nothingSent);
  useEffect(() => {
    if (!import.meta.env.VITE_DESK || !store || !checks || !isOutboxUsed()) return;
    let left = false;
    let stop = (): void => undefined;
    import("./sentList.ts").then(({ followSent }) => {
      if (!left) stop = followSent(checks, setSent);
    });
    return () => {
      left = true;
      stop();
    };
  }, [store, checks]);
  return sent;
}

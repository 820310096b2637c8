import { useCallback, useEffect, useState } from "preact/hooks";
import type { ListedCheck } from "../../records/check/listedCheck.ts";
import { MarkStore } from "../../storage/markStore.ts";
import {
  askNowAndThen,
  isLow,
  type Persistence,
  persistence,
  type Space,
  space,
} from "./persistence.ts";
import { nothingSafe, onlyHere } from "./safety.ts";

export interface Keeping {
  readonly persistence: Persistence;
  readonly space: Space | null;
  readonly low: boolean;
  readonly lastBackupAt: string | null;
  /** Checks that are nowhere but here. */
  readonly onlyHere: readonly ListedCheck[];
}

async function keepingOf(checks: readonly ListedCheck[]): Promise<Keeping> {
  const marks = new MarkStore();
  const known = await marks.safekeeping();
  const safekeeping = known.ok ? known.value : nothingSafe;
  const here = onlyHere(checks, safekeeping);
  // Asked only once there is something worth keeping.
  const kept = here.length > 0 ? await askNowAndThen(marks) : await persistence();
  marks.close();
  const room = await space();
  return {
    persistence: kept,
    space: room,
    low: isLow(room),
    lastBackupAt: safekeeping.lastBackupAt,
    onlyHere: here,
  };
}

/** How safe these checks are on this phone; null while it is being found out. */
export function useKeeping(checks: readonly ListedCheck[] | null): {
  readonly keeping: Keeping | null;
  readonly lookAgain: () => void;
} {
  const [keeping, setKeeping] = useState<Keeping | null>(null);
  const [looks, setLooks] = useState(0);
  useEffect(() => {
    if (!checks) return;
    let left = false;
    keepingOf(checks).then((found) => {
      if (!left) setKeeping(found);
    });
    return () => {
      left = true;
    };
  }, [checks, looks]);
  const lookAgain = useCallback(() => setLooks((count) => count + 1), []);
  return { keeping, lookAgain };
}

import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../physics/outcome.ts";
import { demoPack } from "../records/pack/demoPack.ts";
import type { Pack } from "../records/pack/pack.ts";
import { openPackStore, type PackStore } from "../storage/packStore.ts";

/** The pack in use: the one that ships until another is opened or this one is edited. */
export interface PackInUse {
  readonly pack: Pack;
  /** Of the stored pack; 0 for the one that ships. */
  readonly revision: number;
  /** Why it is not kept on this phone; null where it is. */
  readonly fault: Fault | null;
}

const shipped: PackInUse = { pack: demoPack, revision: 0, fault: null };

let store: PackStore | null = null;
let inUse: PackInUse = shipped;
let loading: Promise<PackInUse> | null = null;
const listeners = new Set<(pack: PackInUse) => void>();

function use(next: PackInUse): PackInUse {
  inUse = next;
  for (const listener of listeners) listener(next);
  return next;
}

function openedStore(): PackStore {
  if (store === null) {
    store = openPackStore();
    store.subscribe(() => read());
  }
  return store;
}

async function read(): Promise<PackInUse> {
  const found = await openedStore().get();
  // A pack held only in memory is not thrown away for a storage that does not answer.
  if (!found.ok) return use({ ...inUse, fault: inUse.revision === 0 ? null : found.fault });
  return use(
    found.value === null
      ? shipped
      : { pack: found.value.pack, revision: found.value.revision, fault: null },
  );
}

/** Reads the kept pack once; screens that need it wait for this. */
export function loadReferencePack(): Promise<PackInUse> {
  loading ??= read();
  return loading;
}

/** The pack in use at this moment; the one that ships until the kept one is read. */
export function referencePack(): Pack {
  return inUse.pack;
}

export type Kept =
  | { readonly kind: "kept" }
  | { readonly kind: "notKept"; readonly fault: Fault }
  /** Another tab has kept a pack since: nothing is written, that one is in use now. */
  | { readonly kind: "changedElsewhere"; readonly theirs: Pack; readonly mine: Pack };

let waitingWrites = 0;
let writes: Promise<unknown> = Promise.resolve();
/** What this tab stored last: a change made while that was under way builds on it. */
let writtenRevision = 0;

/** Puts a pack to use at once, and keeps it after whatever this tab is still keeping. */
export function keepReferencePack(pack: Pack): Promise<Kept> {
  if (waitingWrites === 0) writtenRevision = inUse.revision;
  waitingWrites += 1;
  use({ ...inUse, pack });
  const kept = writes
    .then(() => write(pack))
    .finally(() => {
      waitingWrites -= 1;
    });
  writes = kept.catch(() => undefined);
  return kept;
}

async function write(pack: Pack): Promise<Kept> {
  const outcome = await openedStore().put(pack, writtenRevision);
  const latest = waitingWrites > 1 ? inUse.pack : pack;
  if (!outcome.ok) {
    use({ pack: latest, revision: writtenRevision, fault: outcome.fault });
    return { kind: "notKept", fault: outcome.fault };
  }
  const { kind, stored } = outcome.value;
  if (kind === "changedElsewhere") {
    const theirs = stored?.pack ?? demoPack;
    use({ pack: theirs, revision: stored?.revision ?? 0, fault: null });
    return { kind, theirs, mine: pack };
  }
  writtenRevision = stored.revision;
  use({ pack: latest, revision: stored.revision, fault: null });
  return { kind };
}

/** The pack in use, followed as it changes, here or in another tab. Null until it is read. */
export function usePackInUse(): PackInUse | null {
  const [pack, setPack] = useState<PackInUse | null>(null);
  useEffect(() => {
    let left = false;
    const follow = (next: PackInUse) => !left && setPack(next);
    loadReferencePack().then(() => follow(inUse));
    listeners.add(follow);
    return () => {
      left = true;
      listeners.delete(follow);
    };
  }, []);
  return pack;
}

/** The pack in use, followed as it changes; for screens that come after it was read. */
export function useReferencePack(): Pack {
  return usePackInUse()?.pack ?? referencePack();
}

/** Read anew, as after a reload. */
export function forgetPackInMemory(): void {
  store?.close();
  store = null;
  loading = null;
  inUse = shipped;
}

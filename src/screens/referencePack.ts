import { useEffect, useState } from "preact/hooks";
import type { Fault } from "../physics/outcome.ts";
import type { Pack } from "../records/pack/pack.ts";
import type { ShippedOrigin, StoredPack } from "../storage/database.ts";
import { openPackStore, type PackStore } from "../storage/packStore.ts";
import { shippedDigest } from "./shippedBuild.ts";
import { shippedHead, shippedPack } from "./shippedPack.ts";

/** The pack in use: the one that ships until another is opened or this one is edited. */
export interface PackInUse {
  readonly pack: Pack;
  /** Of the stored pack; 0 for the one that ships. */
  readonly revision: number;
  /** Why it is not kept on this phone; null where it is. */
  readonly fault: Fault | null;
  /** The shipped pack that it grew from. */
  readonly shipped?: ShippedOrigin;
}

const shipped: PackInUse = { pack: shippedHead, revision: 0, fault: null };

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
  if (found.value !== null) return use(inUseOf(found.value));
  return shippedDigest === null ? use(shipped) : takeShipped(shippedDigest);
}

function inUseOf({ pack, revision, shipped: origin }: StoredPack): PackInUse {
  return { pack, revision, fault: null, ...(origin && { shipped: origin }) };
}

/** A maker's pack is kept as it is first used, so that a newer app does not change it behind one's back. */
async function takeShipped(digest: string): Promise<PackInUse> {
  const found = await shippedPack();
  if (!found.ok) return use({ ...shipped, fault: found.fault });
  const origin = { digest, edited: false };
  const kept = await openedStore().put(found.value, 0, origin);
  if (kept.ok && kept.value.stored) return use(inUseOf(kept.value.stored));
  // Not kept, as in a private window: in use all the same.
  return use({ pack: found.value, revision: 0, fault: null, shipped: origin });
}

/** The shipped pack, where it is another one than that in use grew from, and was not refused; else null. */
export async function newerShippedPack(): Promise<Pack | null> {
  if (shippedDigest === null) return null;
  const { shipped: origin } = await loadReferencePack().then(() => inUse);
  if (origin?.digest === shippedDigest || origin?.refused === shippedDigest) return null;
  const found = await shippedPack();
  return found.ok ? found.value : null;
}

/** Puts the shipped pack in use, in place of the one there is. */
export async function useShippedPack(): Promise<Kept | null> {
  const found = await shippedPack();
  if (!found.ok) return null;
  return keepReferencePack(
    found.value,
    shippedDigest === null ? undefined : { digest: shippedDigest, edited: false },
  );
}

/** The one in use stays; the shipped one is not offered again, until there is a newer one. */
export async function refuseShippedPack(): Promise<void> {
  if (shippedDigest === null) return;
  const { pack, shipped: origin } = inUse;
  await keepReferencePack(pack, {
    digest: origin?.digest ?? "",
    edited: origin?.edited ?? true,
    refused: shippedDigest,
  });
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
export function keepReferencePack(pack: Pack, origin?: ShippedOrigin): Promise<Kept> {
  if (waitingWrites === 0) writtenRevision = inUse.revision;
  waitingWrites += 1;
  use({ ...inUse, pack });
  const kept = writes
    .then(() => write(pack, origin))
    .finally(() => {
      waitingWrites -= 1;
    });
  writes = kept.catch(() => undefined);
  return kept;
}

async function write(pack: Pack, origin?: ShippedOrigin): Promise<Kept> {
  const outcome = await openedStore().put(pack, writtenRevision, origin);
  const latest = waitingWrites > 1 ? inUse.pack : pack;
  if (!outcome.ok) {
    use({ pack: latest, revision: writtenRevision, fault: outcome.fault });
    return { kind: "notKept", fault: outcome.fault };
  }
  const { kind, stored } = outcome.value;
  if (kind === "changedElsewhere") {
    const theirs = stored?.pack ?? shippedHead;
    use(stored ? inUseOf(stored) : shipped);
    return { kind, theirs, mine: pack };
  }
  writtenRevision = stored.revision;
  use({ ...inUseOf(stored), pack: latest });
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

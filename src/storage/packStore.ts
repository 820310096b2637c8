import { type Fault, type Outcome, succeed } from "../physics/outcome.ts";
import { openPack, type Pack } from "../records/pack/pack.ts";
import { cleanTexts } from "../records/text/soundText.ts";
import * as messages from "../words/compiled/storage.ts";
import type { Message } from "../words/message.ts";
import { DatabaseHandle, databaseName, type ShippedOrigin, type StoredPack } from "./database.ts";
import type { StoreFaultCode } from "./storeFault.ts";

/** What became of a pack handed in: kept, or not, because another tab had changed it since. */
type PackKept =
  | { readonly kind: "kept"; readonly stored: StoredPack }
  | { readonly kind: "changedElsewhere"; readonly stored: StoredPack | null };

/**
 * The parts library in use on this phone. Nothing is thrown: whatever the browser's storage does
 * comes back as an outcome whose sentence says that the pack was not kept, and why.
 */
export interface PackStore {
  /** Null where no pack has been opened or edited here: then the one that ships is in use. */
  get(): Promise<Outcome<StoredPack | null>>;
  /**
   * Keeps a pack that grew from revision `from` (0: from the one that ships). Where another tab has
   * kept one since, nothing is written and what is stored comes back instead. `shipped`: it is, or is
   * as good as, the pack that ships; absent: it was changed or opened here.
   */
  put(pack: Pack, from: number, shipped?: ShippedOrigin): Promise<Outcome<PackKept>>;
  /** Called when another tab has kept a pack. */
  subscribe(listener: () => void): () => void;
  close(): void;
}

const reasons: { readonly [Code in StoreFaultCode]: Message } = {
  storeRefused: messages.thisBrowserRefusesTo,
  storeFull: messages.storageOfThisPhone,
  storeBlocked: messages.stopfitIsOpenIn,
  storeNewer: messages.newerVersionOfStopfit,
  storeSilent: messages.storageOfThisPhoneDoes,
  storeGone: messages.storageOfThisPhoneHas,
  storeFailed: messages.storageOfThisPhoneReported,
};

/** A fault of the storage, told of the pack instead of a check. */
function ofPack<Value>(outcome: Outcome<Value>): Outcome<Value> {
  if (outcome.ok) return outcome;
  const code = outcome.fault.code as StoreFaultCode;
  const reason = reasons[code] ?? reasons.storeFailed;
  const fault: Fault = {
    code,
    sentence: [messages.libraryIsNotSaved({ reason })],
  };
  return { ok: false, fault };
}

class IndexedPackStore implements PackStore {
  private readonly handle: DatabaseHandle;
  private readonly channel: BroadcastChannel | null;
  private readonly listeners = new Set<() => void>();

  constructor(name: string) {
    this.handle = new DatabaseHandle(name);
    this.channel =
      typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(`${name} pack`);
    if (this.channel !== null) {
      this.channel.onmessage = () => {
        for (const listener of this.listeners) listener();
      };
    }
  }

  async get(): Promise<Outcome<StoredPack | null>> {
    const found = await this.handle.run((database) => database.get("packs", "current"));
    // An earlier version kept texts as they came, an id that no address holds among them.
    if (!found.ok) return ofPack(found);
    const stored = cleanTexts(found.value ?? null);
    return succeed(stored && { ...stored, pack: openPack(stored.pack) });
  }

  async put(pack: Pack, from: number, shipped?: ShippedOrigin): Promise<Outcome<PackKept>> {
    const written = await this.handle.run(async (database): Promise<PackKept> => {
      const transaction = database.transaction("packs", "readwrite", { durability: "strict" });
      const ended = transaction.done;
      // A failure is told by the request or by `done`, whichever is awaited first.
      ended.catch(() => undefined);
      const current = (await transaction.store.get("current")) ?? null;
      if ((current?.revision ?? 0) !== from) {
        await ended;
        return { kind: "changedElsewhere", stored: current };
      }
      const origin = shipped ?? (current?.shipped && { ...current.shipped, edited: true });
      const stored: StoredPack = {
        key: "current",
        pack,
        revision: from + 1,
        keptAt: new Date().toISOString(),
        ...(origin && { shipped: origin }),
      };
      await transaction.store.put(stored);
      await ended;
      return { kind: "kept", stored };
    });
    if (written.ok && written.value.kind === "kept") this.channel?.postMessage("kept");
    return ofPack(written);
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  close(): void {
    this.handle.close();
    this.channel?.close();
    this.listeners.clear();
  }
}

export function openPackStore(name: string = databaseName): PackStore {
  return new IndexedPackStore(name);
}

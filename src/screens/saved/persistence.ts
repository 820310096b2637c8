import { MarkStore } from "../../storage/markStore.ts";
import * as messages from "../../words/compiled/screens/saved.ts";

/** Whether the browser keeps what is stored here until the person clears it. */
export type Persistence = "kept" | "mayEvict" | "unknown";

export interface Space {
  readonly usedBytes: number;
  readonly freeBytes: number;
}

/** Below this a check with photos may not fit any more (common practice). */
const lowBytes = 50e6;

export function isLow(space: Space | null): boolean {
  return space !== null && space.freeBytes < lowBytes;
}

function storageManager(): Partial<StorageManager> {
  return globalThis.navigator?.storage ?? {};
}

export async function persistence(): Promise<Persistence> {
  try {
    const persisted = await storageManager().persisted?.();
    return persisted === undefined ? "unknown" : persisted ? "kept" : "mayEvict";
  } catch {
    return "unknown";
  }
}

/** False where nobody could be asked: a button for it could only fail. */
export function canAskToKeep(): boolean {
  return typeof storageManager().persist === "function";
}

/** Asks the browser; some ask the person in turn. */
export async function askToKeep(): Promise<Persistence> {
  try {
    const kept = await storageManager().persist?.();
    return kept === undefined ? "unknown" : kept ? "kept" : "mayEvict";
  } catch {
    return "unknown";
  }
}

const dayMs = 86_400_000;

/**
 * Asks where it has not been asked for a week: some browsers answer by themselves, differently once the
 * app is installed or often used, and those that ask the person shall not do so each time.
 */
export async function askNowAndThen(marks: MarkStore, now = Date.now()): Promise<Persistence> {
  const before = await persistence();
  if (before === "kept") return before;
  const known = await marks.safekeeping();
  const askedAt = known.ok ? known.value.askedAt : null;
  // A mark of the future was made before the clock was set back.
  if (askedAt !== null && Math.abs(now - Date.parse(askedAt)) < 7 * dayMs) return before;
  await marks.markAsked();
  return askToKeep();
}

/** To be called once something is kept that is worth keeping. */
export async function askOnceWorthKeeping(): Promise<void> {
  const marks = new MarkStore();
  await askNowAndThen(marks);
  marks.close();
}

export async function space(): Promise<Space | null> {
  try {
    const { usage, quota } = (await storageManager().estimate?.()) ?? {};
    if (usage === undefined || quota === undefined || quota <= 0) return null;
    return { usedBytes: usage, freeBytes: Math.max(0, quota - usage) };
  } catch {
    return null;
  }
}

export function sizeText(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  if (bytes < 1e9) return `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
  return messages.gb({ bytes: (bytes / 1e9).toFixed(1) });
}

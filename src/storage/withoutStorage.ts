import { type Fault, type Outcome, succeed } from "../physics/outcome.ts";
import { listedCheck } from "../records/check/listedCheck.ts";
import { copyStored, type StoredCheck } from "../records/check/storedCheck.ts";
import { askBeforeLeaving } from "./askBeforeLeaving.ts";
import type { CheckStore } from "./checkStore.ts";

/**
 * Checks held only while the page is open, where the browser keeps nothing. What is handed in can be
 * read again, but every outcome of keeping it is the fault, so that no screen calls it kept.
 */
export function withoutStorage(fault: Fault): CheckStore {
  const checks = new Map<string, StoredCheck>();
  const notKept: Outcome<never> = { ok: false, fault };

  const change = (id: string, update: (stored: StoredCheck) => StoredCheck) => {
    const found = checks.get(id);
    if (!found) return Promise.resolve(notKept);
    const changed = update(found);
    checks.set(id, changed);
    return Promise.resolve(succeed(changed));
  };

  return {
    list: (which = "present") =>
      Promise.resolve(
        succeed(
          [...checks.values()]
            .filter(({ deletedAt }) => (deletedAt === undefined) === (which === "present"))
            .sort((a, b) => b.updatedAt.localeCompare(a.updatedAt))
            .map(listedCheck),
        ),
      ),
    setAside: () => Promise.resolve(succeed([])),
    rowText: () => Promise.resolve(notKept),
    discard: () => Promise.resolve(notKept),
    get: (id) => Promise.resolve(succeed(checks.get(id) ?? null)),
    put(stored) {
      checks.set(stored.id, stored);
      askBeforeLeaving(checks, true);
      return Promise.resolve(notKept);
    },
    add(stored) {
      const present = checks.has(stored.id);
      if (!present) checks.set(stored.id, stored);
      return Promise.resolve(succeed(!present));
    },
    takeIn: () => Promise.resolve(notKept),
    unkept: () => [...checks.values()].filter(({ deletedAt }) => deletedAt === undefined),
    update: change,
    copy(id, name) {
      const found = checks.get(id);
      if (!found) return Promise.resolve(notKept);
      const copied = copyStored(found, name);
      checks.set(copied.id, copied);
      return Promise.resolve(succeed(copied));
    },
    remove: (id) => change(id, (stored) => ({ ...stored, deletedAt: new Date().toISOString() })),
    restore: (id) => change(id, ({ deletedAt: _, ...stored }) => stored),
    purge: () => Promise.resolve(succeed(0)),
    putAway: (stored) => {
      checks.set(stored.id, stored);
    },
    subscribe: () => () => undefined,
    onClosing: () => () => undefined,
    close: () => askBeforeLeaving(checks, false),
  };
}

import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Pool } from "../../compute/pool.ts";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { type Decision, type DeskCheck, deskChecks } from "../../records/review/decision.ts";
import { viewed, wholeView } from "../../records/review/deskList.ts";
import { type Listed, listedOf } from "../../records/review/listedSubmission.ts";
import { canonicalText } from "../../records/text/canonicalText.ts";
import {
  type DeskStore,
  type FirstRows,
  openDeskStore,
  type Result,
} from "../../storage/deskStore.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { loadReferencePack } from "../referencePack.ts";
import { type Shared, useShared } from "./shared/useShared.ts";
import { startPoolWithPack } from "./startPoolWithPack.ts";
import { type Computing, useComputing } from "./useComputing.ts";
import { type Imports, useImports } from "./useImports.ts";

export interface Desk extends Imports, Omit<Computing, "allow"> {
  readonly store: DeskStore | null;
  /** Why nothing can be kept, or what could not be. */
  readonly fault: Fault | null;
  /** Null until they are read. */
  readonly checks: readonly DeskCheck[] | null;
  /** The top of the list as it was last, to be seen until all is read. */
  readonly first: FirstRows | null;
  readonly decisions: readonly Decision[];
  /** Null where the build has no shared desk. */
  readonly shared: Shared | null;
  decide(decision: Decision): Promise<Outcome<readonly string[]>>;
}

export interface DeskSurroundings {
  readonly openStore?: () => Promise<Outcome<DeskStore>>;
  readonly startPool?: () => Pool;
}

const redrawMs = 500;
/** Rows that are painted before all others are read: more than any screen shows. */
const firstRows = 40;
/** The top of the list is kept once it stands still. */
const keepFirstMs = 2000;

function painted(): Promise<void> {
  return new Promise((resolve) => {
    // A page in the background is never painted.
    const timer = setTimeout(resolve, redrawMs);
    requestAnimationFrame(() =>
      setTimeout(() => {
        clearTimeout(timer);
        resolve();
      }),
    );
  });
}

/** Everything the desk's screens stand on; it goes on while one goes from the list to a check. */
export function useDesk({
  openStore = openDeskStore,
  startPool = startPoolWithPack,
}: DeskSurroundings = {}): Desk {
  const [store, setStore] = useState<DeskStore | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [checks, setChecks] = useState<readonly DeskCheck[] | null>(null);
  const [first, setFirst] = useState<FirstRows | null>(null);
  const [decisions, setDecisions] = useState<readonly Decision[]>([]);
  const held = useRef<{ submissions: Map<string, Listed>; decisions: readonly Decision[] }>({
    submissions: new Map(),
    decisions: [],
  });
  const redraw = useRef<ReturnType<typeof setTimeout> | null>(null);

  const show = useCallback(() => {
    redraw.current = null;
    setChecks(deskChecks([...held.current.submissions.values()], held.current.decisions));
    setDecisions(held.current.decisions);
  }, []);
  const showSoon = useCallback(() => {
    redraw.current ??= setTimeout(show, redrawMs);
  }, [show]);

  const load = useCallback(
    async (from: DeskStore, renew = false) => {
      const [submissions, decided] = await Promise.all([
        renew ? from.renewSnapshot() : from.submissions(),
        from.decisions(),
      ]);
      if (!submissions.ok) return setFault(submissions.fault);
      if (!decided.ok) return setFault(decided.fault);
      held.current = {
        submissions: new Map(submissions.value.map((each) => [each.key, listedOf(each)])),
        decisions: decided.value,
      };
      show();
    },
    [show],
  );

  useEffect(() => {
    let left = false;
    let opened: DeskStore | null = null;
    const start = async () => {
      const outcome = await openStore();
      if (!outcome.ok) {
        setFault(outcome.fault);
        setChecks([]);
        return;
      }
      opened = outcome.value;
      if (left) return opened.close();
      const top = await opened.first();
      if (top.ok && top.value !== null) {
        setFirst(top.value);
        await painted();
      }
      const { pack } = await loadReferencePack();
      if (left) return;
      await opened.judgeBy(canonicalText(pack.rules ?? {}));
      if (left) return;
      setStore(opened);
      const [snapshot, decided] = await Promise.all([opened.snapshot(), opened.decisions()]);
      const known = snapshot.ok && decided.ok ? snapshot.value : null;
      if (known !== null && decided.ok && !left) {
        held.current = {
          submissions: new Map(known.submissions.map((each) => [each.key, each])),
          decisions: decided.value,
        };
        show();
      }
      if (known?.fresh !== true) {
        // What was known is shown first.
        if (known !== null) await new Promise((resolve) => setTimeout(resolve, redrawMs));
        if (!left) await load(opened, true);
      }
    };
    start();
    return () => {
      left = true;
      if (redraw.current) clearTimeout(redraw.current);
      opened?.close();
    };
  }, [openStore, load, show]);

  useEffect(() => {
    if (!store) return;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const leave = store.subscribe((change) => {
      const wait = change === "decisions" ? 0 : 2 * redrawMs;
      timer ??= setTimeout(() => {
        timer = null;
        load(store);
      }, wait);
    });
    return () => {
      leave();
      if (timer) clearTimeout(timer);
    };
  }, [store, load]);

  useEffect(() => {
    if (!store || !checks) return;
    const timer = setTimeout(() => {
      store.keepFirst({
        count: checks.length,
        checks: viewed(checks, wholeView).slice(0, firstRows),
      });
    }, keepFirstMs);
    return () => clearTimeout(timer);
  }, [store, checks]);

  const allow = useRef<() => void>(() => undefined);
  const reload = useCallback(
    async (from: DeskStore) => {
      allow.current();
      await load(from, true);
    },
    [load],
  );
  const imports = useImports({ store, ready: checks !== null, startPool, onEnded: reload });
  const busy = imports.importing?.state === "reading" || imports.importing?.state === "running";
  const onResults = useCallback(
    (results: readonly Result[]) => {
      for (const { key, computed } of results) {
        const known = held.current.submissions.get(key);
        if (!known) continue;
        const { verdict, odd } = computed;
        held.current.submissions.set(key, { ...known, computed: { verdict, odd }, isComputed: 1 });
      }
      showSoon();
    },
    [showSoon],
  );
  const { allow: allowComputing, ...computing } = useComputing({
    store,
    startPool,
    waiting: checks?.some(({ latest }) => latest.isComputed === 0) ?? false,
    busy,
    onResults,
  });
  allow.current = allowComputing;

  const reloadTimer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const loadIn = useCallback(
    (waitMs: number) => {
      if (!store) return;
      reloadTimer.current ??= setTimeout(() => {
        reloadTimer.current = null;
        load(store);
      }, waitMs);
    },
    [store, load],
  );
  const onDecisions = useCallback(() => loadIn(0), [loadIn]);
  const onSubmissions = useCallback(() => loadIn(redrawMs), [loadIn]);
  const shared = useShared(store, startPool, onDecisions, onSubmissions);

  return {
    store,
    fault,
    shared,
    checks,
    first,
    decisions,
    ...imports,
    ...computing,
    decide: async (decision) => {
      if (!store) return { ok: false, fault: noStore };
      const decided = await store.decide([decision]);
      if (decided.ok) {
        held.current = {
          ...held.current,
          decisions: [...held.current.decisions, decision],
        };
        show();
      }
      return decided;
    },
  };
}

const noStore: Fault = {
  code: "storeRefused",
  sentence: [messages.notSavedThisBrowser],
};

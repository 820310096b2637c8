import { useCallback, useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Pool } from "../../../compute/pool.ts";
import type { Hand, Hands } from "../../../engine/handsSeen.ts";
import { greatestMessage, streams } from "../../../engine/subjects.ts";
import type { Fault } from "../../../physics/outcome.ts";
import { newId } from "../../../records/check/storedCheck.ts";
import type { Decision } from "../../../records/review/decision.ts";
import { canonicalText } from "../../../records/text/canonicalText.ts";
import type { ReplyAtDesk, SentBy, ToShare } from "../../../storage/deskDatabase.ts";
import type { DeskStore } from "../../../storage/deskStore.ts";
import { loadReferencePack, referencePack } from "../../referencePack.ts";
import type { PackThere, SharedRun, SharedState } from "./sharedRun.ts";

export interface Shared {
  /** Null: nobody has signed in here. */
  readonly state: SharedState | null;
  /** What is still to be told there. */
  readonly waiting: readonly ToShare[];
  readonly hands: Hands;
  /** By the decision they tell. */
  readonly replies: ReadonlyMap<string, ReplyAtDesk>;
  /** By submission. */
  readonly sentBy: ReadonlyMap<string, SentBy>;
  signIn(file: File): Promise<Fault | null>;
  signOut(): Promise<void>;
  /** Others see that this person looks at a check, or took it, or no longer does. */
  hand(check: string, does: Hand["does"], on: boolean): void;
  sendReply(decision: Decision): void;
  erase(checkId: string): void;
  /** Offers the pack in use here to the other desks, once the shared one is reached; too large a one stays here. */
  offerPack(): Promise<"offered" | "tooLarge" | "notKept">;
  /** The newest version that another put there; null: none that is not in use here. */
  readonly packThere: PackThere | null;
  forgetPack(): void;
}

const nobody: Hands = new Map();
const lookEveryMs = 250;

/** The shared desk of this build; null where it has none. */
export function useShared(
  store: DeskStore | null,
  startPool: () => Pool,
  onDecisions: () => void,
  onSubmissions: () => void,
): Shared | null {
  const [credential, setCredential] = useState<string | null>(null);
  const [state, setState] = useState<SharedState | null>(null);
  const [waiting, setWaiting] = useState<readonly ToShare[]>([]);
  const [hands, setHands] = useState<Hands>(nobody);
  const [facts, setFacts] = useState<Pick<Shared, "replies" | "sentBy">>({
    replies: new Map(),
    sentBy: new Map(),
  });
  const run = useRef<SharedRun | null>(null);

  useEffect(() => {
    if (!import.meta.env.VITE_DESK || !store) return;
    store.shared.credential().then(setCredential);
  }, [store]);

  useEffect(() => {
    if (!import.meta.env.VITE_DESK || !store) return;
    let left = false;
    let timer: ReturnType<typeof setTimeout> | null = null;
    const look = async () => {
      timer = null;
      const [told, kept] = await Promise.all([store.shared.toShare(), store.shared.facts()]);
      if (left) return;
      if (told.ok) setWaiting(told.value);
      if (!kept.ok) return;
      const { replies, sentBy } = kept.value;
      setFacts({
        replies: new Map(replies.map((reply) => [reply.id, reply])),
        sentBy: new Map(sentBy.map((sent) => [sent.key, sent])),
      });
    };
    const soon = () => {
      timer ??= setTimeout(look, lookEveryMs);
    };
    look();
    const stops = [
      store.shared.onWaiting(soon),
      store.onShared((change) => {
        soon();
        if (change === "decisions") onDecisions();
        if (change === "submissions") onSubmissions();
      }),
      store.subscribe(soon),
    ];
    return () => {
      left = true;
      if (timer) clearTimeout(timer);
      for (const stop of stops) stop();
    };
  }, [store, onDecisions, onSubmissions]);

  useEffect(() => {
    if (!import.meta.env.VITE_DESK || !store || credential === null) return;
    let left = false;
    let pool: Pool | null = null;
    const start = async () => {
      const [{ startShared }, { readDeskAddress }, { wsconnect }] = await Promise.all([
        import("./sharedRun.ts"),
        import("../../../engine/address.ts"),
        import("@nats-io/nats-core"),
      ]);
      const address = readDeskAddress(import.meta.env.VITE_DESK);
      if (left || !address.ok) return;
      pool = startPool();
      run.current = startShared({
        store,
        pool,
        credential,
        address: address.value,
        dial: wsconnect,
        onState: setState,
        onHands: setHands,
        onPack: async (there) => {
          await loadReferencePack();
          const here = canonicalText(there.pack) === canonicalText(referencePack());
          if (!left) setPackThere(here ? null : there);
        },
      });
    };
    start();
    const leave = () => run.current?.stop();
    addEventListener("pagehide", leave);
    return () => {
      left = true;
      removeEventListener("pagehide", leave);
      run.current?.stop();
      run.current = null;
      pool?.dispose();
      setState(null);
      setHands(nobody);
    };
  }, [store, credential, startPool]);

  const [packThere, setPackThere] = useState<PackThere | null>(null);
  const hand = useCallback(
    (check: string, does: Hand["does"], on: boolean) => run.current?.hand(check, does, on),
    [],
  );
  const shared = useMemo(
    (): Shared | null =>
      store && {
        state,
        waiting,
        hands,
        ...facts,
        hand,
        packThere,
        forgetPack: () => {
          if (packThere) store.shared.take(streams.packs, packThere.sequence, []);
          setPackThere(null);
        },
        offerPack: async () => {
          await loadReferencePack();
          const bytes = new TextEncoder().encode(canonicalText(referencePack())).length;
          if (bytes > greatestMessage) return "tooLarge";
          const put = await store.shared.share({
            key: "pack",
            kind: "pack",
            checkId: "",
            id: newId(),
            at: new Date().toISOString(),
          });
          return put.ok ? "offered" : "notKept";
        },
        signIn: async (file) => {
          if (!import.meta.env.VITE_DESK) return null;
          const { personLogin } = await import("../../../engine/login.ts");
          const text = file.size < 100_000 ? await file.text() : "";
          const login = await personLogin(text);
          if (!login.ok) return login.fault;
          const kept = await store.shared.keepCredential(text);
          if (!kept.ok) return kept.fault;
          setCredential(text);
          return null;
        },
        signOut: async () => {
          await store.shared.keepCredential(null);
          setCredential(null);
        },
        sendReply: ({ key, checkId }) =>
          store.shared.share({
            key: `reply ${key}`,
            kind: "reply",
            checkId,
            id: key,
            at: new Date().toISOString(),
          }),
        erase: (checkId) =>
          store.shared.share({
            key: `erase ${checkId}`,
            kind: "erase",
            checkId,
            id: newId(),
            at: new Date().toISOString(),
          }),
      },
    [store, state, waiting, hands, facts, hand, packThere],
  );
  return import.meta.env.VITE_DESK ? shared : null;
}

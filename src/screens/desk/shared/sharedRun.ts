import type { Pool } from "../../../compute/pool.ts";
import type { DeskAddress } from "../../../engine/address.ts";
import { connectEngine, type Dial, type EngineConnection } from "../../../engine/connection.ts";
import { personalLasts } from "../../../engine/erase.ts";
import { type Following, follow } from "../../../engine/follow.ts";
import { HandsAtDesk } from "../../../engine/hands.ts";
import type { Hand, Hands } from "../../../engine/handsSeen.ts";
import { personLogin } from "../../../engine/login.ts";
import { streams, subjectParts } from "../../../engine/subjects.ts";
import type { Fault } from "../../../physics/outcome.ts";
import type { Pack } from "../../../records/pack/pack.ts";
import type { DeskStore } from "../../../storage/deskStore.ts";
import { fromStreams } from "./fromStreams.ts";
import { tellShared } from "./tellShared.ts";

export interface SharedState {
  readonly state: "connecting" | "on" | "off" | "refused";
  /** Who the credential says is here. */
  readonly person: string;
  readonly fault: Fault | null;
}

/** A version of the pack that somebody put there. */
export interface PackThere {
  readonly by: string;
  readonly at: string;
  readonly pack: Pack;
  /** Its place in the stream: what was looked at is not shown again. */
  readonly sequence: number;
}

export interface SharedRun {
  /** Others see it, for as long as it is on. */
  hand(check: string, does: Hand["does"], on: boolean): void;
  stop(): void;
}

const followed = [streams.personal, streams.inbox, streams.decisions, streams.replies] as const;
const againMs = 3000;

/**
 * Keeps this desk's copy with the shared one: follows the streams from where it stands, tells what is decided
 * here, and shows whose hands are on what. Without a connection the copy is worked on, and told later.
 */
export function startShared({
  store,
  pool,
  credential,
  address,
  dial,
  onState,
  onHands,
  onPack,
}: {
  readonly store: DeskStore;
  readonly pool: Pool;
  readonly credential: string;
  readonly address: DeskAddress;
  readonly dial: Dial;
  onState(state: SharedState): void;
  onHands(hands: Hands): void;
  onPack(there: PackThere): void;
}): SharedRun {
  let stopped = false;
  let person = "";
  let connection: EngineConnection | null = null;
  let hands: HandsAtDesk | null = null;
  let followings: Following[] = [];
  const wanted = { looks: new Set<string>(), took: new Set<string>() };
  const doesNow = (check: string) =>
    wanted.took.has(check) ? "took" : wanted.looks.has(check) ? "looks" : null;
  const say = (state: SharedState["state"], fault: Fault | null = null) => {
    if (!stopped) onState({ state, person, fault });
  };

  let telling = false;
  let tellAgain = false;
  const tell = (): void => {
    tellAgain = true;
    if (telling) return;
    telling = true;
    (async () => {
      while (tellAgain && connection && !stopped) {
        tellAgain = false;
        const fault = await tellShared(store, connection);
        if (fault !== null) {
          if (fault.code === "deskForbids") say("on", fault);
          await new Promise((resolve) => setTimeout(resolve, againMs));
          tellAgain = !stopped && !connection.nats.isClosed();
        }
      }
    })().finally(() => {
      telling = false;
    });
  };
  const leaveWaiting = store.shared.onWaiting(tell);

  const begin = async (opened: EngineConnection): Promise<void> => {
    connection = opened;
    for (const stream of followed) {
      const position = await store.shared.position(stream);
      if (!position.ok || stopped) return;
      followings.push(
        follow(opened, stream, position.value, async (batch) => {
          const reached = batch.at(-1)?.sequence;
          if (reached === undefined) return true;
          const things = await fromStreams(pool, batch);
          return !stopped && (await store.shared.take(stream, reached, things)).ok;
        }),
      );
    }
    const packs = await store.shared.position(streams.packs);
    if (!packs.ok || stopped) return;
    followings.push(
      follow(opened, streams.packs, packs.value, async (batch) => {
        const newest = batch.at(-1);
        if (newest === undefined) return true;
        const { by } = subjectParts(newest.subject);
        const done = await pool.run({ kind: "readPack", text: newest.body });
        if (by !== person && done.kind === "pack" && done.read.ok) {
          onPack({ by, at: newest.at, pack: done.read.value, sequence: newest.sequence });
        }
        return true;
      }),
    );
    hands = new HandsAtDesk(opened, onHands);
    for (const check of [...wanted.looks, ...wanted.took]) hands.set(check, doesNow(check));
    hands.start().catch(() => undefined);
    tell();
    const lasts = await personalLasts(opened);
    if (lasts !== null) {
      await store.shared.forgetBefore(new Date(Date.now() - lasts).toISOString());
    }
  };

  const run = async (): Promise<void> => {
    const login = await personLogin(credential);
    if (!login.ok) return say("refused", login.fault);
    person = login.value.name;
    say("connecting");
    while (!stopped) {
      const opened = await connectEngine({
        servers: address.url,
        login: login.value,
        dial,
        stay: true,
        onState: (state) => {
          say(state);
          if (state === "on") tell();
        },
        onRefused: (fault) => say("refused", fault),
      });
      if (stopped && opened.ok) await opened.value.nats.close();
      if (stopped) return;
      if (opened.ok) return begin(opened.value);
      if (opened.fault.code === "deskRefused") return say("refused", opened.fault);
      say("off", opened.fault);
      await new Promise((resolve) => setTimeout(resolve, againMs));
    }
  };
  run();

  return {
    hand: (check, does, on) => {
      if (on) wanted[does].add(check);
      else wanted[does].delete(check);
      hands?.set(check, doesNow(check));
    },
    stop: () => {
      hands?.stop();
      stopped = true;
      leaveWaiting();
      for (const following of followings) following.stop();
      followings = [];
      // What was just signed off is still to go out.
      connection?.nats.drain().catch(() => undefined);
    },
  };
}

import { jetstream } from "@nats-io/jetstream";
import { type KV, Kvm } from "@nats-io/kv";
import type { EngineConnection } from "./connection.ts";
import type { Hand, Hands } from "./handsSeen.ts";
import { handsBucket, handsLastMs } from "./subjects.ts";

const signEveryMs = handsLastMs / 3;

/** Signs that others see: what this person looks at and took, and what the others do. */
export class HandsAtDesk {
  readonly #connection: EngineConnection;
  readonly #onHands: (hands: Hands) => void;
  #bucket: KV | null = null;
  #mine = new Map<string, Hand["does"]>();
  #seen = new Map<string, Hand & { readonly check: string; readonly seenAt: number }>();
  #timers: ReturnType<typeof setInterval>[] = [];

  constructor(connection: EngineConnection, onHands: (hands: Hands) => void) {
    this.#connection = connection;
    this.#onHands = onHands;
  }

  async start(): Promise<void> {
    const bucket = await new Kvm(jetstream(this.#connection.nats)).open(handsBucket);
    this.#bucket = bucket;
    this.#timers = [
      setInterval(() => {
        for (const check of this.#mine.keys()) this.#sign(check);
        this.#tell();
      }, signEveryMs),
    ];
    for (const check of this.#mine.keys()) this.#sign(check);
    this.#watch(bucket);
  }

  async #watch(bucket: KV): Promise<void> {
    const changes = await bucket.watch();
    for await (const { key, operation, value, revision, created } of changes) {
      const [check = "", person = ""] = key.split(".");
      const does = new TextDecoder().decode(value);
      if (operation === "PUT" && (does === "looks" || does === "took")) {
        const before = this.#seen.get(key);
        const stays = before?.does === does && before.seenAt > Date.now() - handsLastMs;
        this.#seen.set(key, {
          check,
          person,
          does,
          // A sign renewed is no later claim.
          revision: stays ? before.revision : revision,
          at: created.getTime(),
          seenAt: Date.now(),
        });
      } else this.#seen.delete(key);
      this.#tell();
    }
  }

  /** From now on others see this; null: gone. */
  set(check: string, does: Hand["does"] | null): void {
    if (does === null) {
      if (!this.#mine.delete(check)) return;
      this.#bucket?.delete(`${check}.${this.#connection.name}`).catch(() => undefined);
    } else {
      if (this.#mine.get(check) === does) return;
      this.#mine.set(check, does);
      this.#sign(check);
    }
  }

  does(check: string): Hand["does"] | null {
    return this.#mine.get(check) ?? null;
  }

  #sign(check: string): void {
    const does = this.#mine.get(check);
    if (does) this.#bucket?.put(`${check}.${this.#connection.name}`, does).catch(() => undefined);
  }

  #tell(): void {
    const now = Date.now();
    const hands = new Map<string, Hand[]>();
    for (const [key, { check, seenAt, ...hand }] of this.#seen) {
      if (now - seenAt > handsLastMs) this.#seen.delete(key);
      else hands.set(check, [...(hands.get(check) ?? []), hand]);
    }
    this.#onHands(hands);
  }

  stop(): void {
    for (const timer of this.#timers) clearInterval(timer);
    for (const check of [...this.#mine.keys()]) this.set(check, null);
  }
}

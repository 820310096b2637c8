import { jetstreamManager } from "@nats-io/jetstream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { erasePersonal } from "../../src/engine/erase.ts";
import { newPhoneKey } from "../../src/engine/login.ts";
import { publish } from "../../src/engine/publish.ts";
import { streams, subjectOf } from "../../src/engine/subjects.ts";
import { contentHash } from "../../src/records/exchanged/contentHash.ts";
import { EngineBench, engineHere, opened } from "../support/engine/engineBench.ts";
import { allOf, sent } from "../support/engine/messages.ts";

function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe.skipIf(!engineHere)("three nodes", () => {
  let bench: EngineBench;
  beforeAll(async () => {
    bench = await EngineBench.start(3);
  }, 60_000);
  afterAll(() => bench?.dispose());

  it("2,000 submissions of 20 senders, with resends, dropped connections and a killed leader: none lost, none twice", async () => {
    const desk = await bench.person("ines");
    const manager = await jetstreamManager(await bench.keeper());
    const leader = async () => (await manager.streams.info(streams.inbox)).cluster?.leader ?? "";
    const expected = new Map<string, string>();
    let acknowledged = 0;
    let resent = 0;
    let dropped = 0;

    const sender = async (number: number): Promise<void> => {
      const random = seeded(number + 1);
      const key = newPhoneKey();
      const login = await bench.phoneLogin(key);
      let phone = opened(await bench.connectAs(login));
      for (let place = 0; place < 100; place += 1) {
        const body = JSON.stringify({ number, place, padding: "x".repeat(600) });
        const message = await sent(key.publicKey, `check-${place}`, body);
        expected.set(message.subject, body);
        for (;;) {
          const put = await publish(phone, message, { timeout: 1500 });
          if (put.ok) break;
          await new Promise((resolve) => setTimeout(resolve, 100));
        }
        acknowledged += 1;
        if (random() < 0.2) {
          resent += 1;
          await publish(phone, message);
        }
        if (random() < 0.03) {
          dropped += 1;
          // Sent, and the connection gone before the engine can say so.
          publish(phone, message);
          await phone.nats.close();
          phone = opened(await bench.connectAs(login));
        }
      }
    };

    const fault = async (): Promise<string> => {
      while (acknowledged < 500) await new Promise((resolve) => setTimeout(resolve, 20));
      const first = await leader();
      await bench.killNode(first);
      while (acknowledged < 1400) await new Promise((resolve) => setTimeout(resolve, 20));
      bench.startNode(first);
      return first;
    };
    const started = Date.now();
    const [killed] = await Promise.all([
      fault(),
      ...Array.from({ length: 20 }, (_, n) => sender(n)),
    ]);
    const seconds = (Date.now() - started) / 1000;

    const arrived = await allOf(desk, streams.inbox, 2000);
    const { state } = await manager.streams.info(streams.inbox);
    console.log(
      `${acknowledged} acknowledged in ${seconds.toFixed(1)} s, ${resent} sent again, ${dropped} connections dropped, ${killed} killed; lost ${
        2000 - new Set(arrived.map(({ subject }) => subject)).size
      }, twice ${state.messages - 2000}`,
    );
    expect(killed).not.toBe("");
    expect(resent).toBeGreaterThan(200);
    expect(dropped).toBeGreaterThan(20);
    expect(state.messages).toBe(2000);
    expect(new Map(arrived.map(({ subject, body }) => [subject, body]))).toEqual(expected);
    expect(arrived.map(({ sequence }) => sequence)).toEqual(
      [...arrived].map(({ sequence }) => sequence).sort((a, b) => a - b),
    );
    const later = await allOf(desk, streams.inbox, 500, arrived[1499]?.sequence ?? 0);
    expect(later).toEqual(arrived.slice(1500));
  }, 120_000);

  it("what was sent again after days is no second message: the stream itself has each once", async () => {
    const phone = await bench.phone();
    const message = await sent(phone.publicKey, "check-again", "the same");
    expect(opened(await publish(phone, message)).sequence).toBeGreaterThan(0);
    // Another message id, as if the engine had forgotten the first in the meantime.
    const again = opened(await publish(phone, { ...message, hash: "forgotten" }));
    expect(again.sequence).toBeNull();
  });

  it("nothing can be taken out of the readings, the decisions and the replies, by nobody", async () => {
    const manager = await jetstreamManager(await bench.keeper());
    for (const stream of [streams.inbox, streams.decisions, streams.replies, streams.packs]) {
      await expect(manager.streams.purge(stream)).rejects.toThrow(/not permitted/);
      await expect(manager.streams.deleteMessage(stream, 1)).rejects.toThrow(/not permitted/);
      const { config } = await manager.streams.info(stream);
      expect(config.num_replicas).toBe(3);
      await expect(
        manager.streams.update(stream, { ...config, deny_delete: false }),
      ).rejects.toThrow();
    }
  });

  it("names and photos are erased by check, and all else remains", async () => {
    const keeper = await bench.keeper();
    const [phone, desk] = [await bench.phone(), await bench.person("erasing")];
    const put = async (check: string, body: string) => {
      const subject = subjectOf.personal(phone.publicKey, check, await contentHash(body));
      return opened(await publish(phone, { subject, hash: await contentHash(body), body }));
    };
    await put("one", "Kim");
    await put("one", "a photo");
    await put("other", "Sam");
    const manager = await jetstreamManager(keeper);
    const before = (await manager.streams.info(streams.inbox)).state.messages;
    expect(opened(await erasePersonal(desk, "one"))).toBe(2);
    const left = await allOf(desk, streams.personal, 1);
    expect(left.map(({ body }) => body)).toEqual(["Sam"]);
    expect((await manager.streams.info(streams.inbox)).state.messages).toBe(before);
  });
});

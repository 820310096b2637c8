import { jetstream, jetstreamManager } from "@nats-io/jetstream";
import { Kvm } from "@nats-io/kv";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { EngineConnection } from "../../src/engine/connection.ts";
import { erasePersonal } from "../../src/engine/erase.ts";
import { fetchReply } from "../../src/engine/fetchReply.ts";
import { type Arrived, follow } from "../../src/engine/follow.ts";
import { newPhoneKey, personLogin } from "../../src/engine/login.ts";
import { type Outgoing, publish } from "../../src/engine/publish.ts";
import { handsBucket, type StreamName, streams, subjectOf } from "../../src/engine/subjects.ts";
import { contentHash } from "../../src/records/exchanged/contentHash.ts";
import { withNewSenders, withTakenBack } from "../../src/server/deskState.ts";
import { makeStreams } from "../../src/server/streamsMade.ts";
import { EngineBench, engineHere, opened } from "../support/engine/engineBench.ts";

const sent = async (sender: string, check: string, body: string): Promise<Outgoing> => {
  const hash = await contentHash(body);
  return { subject: subjectOf.readings(sender, check, hash), hash, body };
};

/** All of a stream, as a desk gets it that has read up to `after`. */
async function allOf(desk: EngineConnection, stream: StreamName, count: number, after = 0) {
  const got: Arrived[] = [];
  await new Promise<void>((resolve) => {
    const following = follow(desk, stream, after, async (batch) => {
      got.push(...batch);
      if (got.length >= count) {
        following.stop();
        resolve();
      }
      return true;
    });
  });
  return got;
}

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
      let phone = await bench.phone(key);
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
          phone = await bench.phone(key);
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

describe.skipIf(!engineHere)("who may do what", () => {
  let bench: EngineBench;
  beforeAll(async () => {
    bench = await EngineBench.start(1, { inboxBytes: 4 * 1024 ** 2 });
  }, 60_000);
  afterAll(() => bench?.dispose());

  /** What a subscription brings while `work` runs; and whether it was refused. */
  async function overheard(phone: EngineConnection, subject: string, work: () => Promise<unknown>) {
    const heard: string[] = [];
    const subscription = phone.nats.subscribe(subject, {
      callback: (refusal, message) => {
        if (!refusal) heard.push(message.subject);
      },
    });
    const refused = subscription.closed.then(
      (end) => end instanceof Error,
      () => true,
    );
    await phone.nats.flush();
    await work();
    await phone.nats.flush();
    subscription.unsubscribe();
    return { heard, refused: await refused };
  }

  it("a sender hears nothing that is not its own", async () => {
    const [victim, spy] = [await bench.phone(), await bench.phone()];
    const desk = await bench.person("ines");
    const work = async () => {
      const message = await sent(victim.publicKey, "c1", "secret readings");
      opened(await publish(victim, message));
      const subject = subjectOf.reply(victim.publicKey, "c1");
      opened(await publish(desk, { subject, hash: "r1", body: "secret reply" }));
      expect(opened(await fetchReply(victim, "c1"))).toBe("secret reply");
    };
    for (const subject of [
      ">",
      "inbox.>",
      "reply.>",
      "_INBOX.>",
      `_INBOX.${victim.publicKey}.>`,
      "$JS.>",
      "$SYS.>",
      "$KV.>",
      "decision.*.*.*",
    ]) {
      const { heard, refused } = await overheard(spy, subject, work);
      expect({ subject, heard, refused }).toEqual({ subject, heard: [], refused: true });
    }
  });

  it("a sender can't read or list what is in the streams, nor fetch a reply to another", async () => {
    const [victim, spy] = [await bench.phone(), await bench.phone()];
    const ask = (subject: string, body = "") =>
      spy.nats.request(subject, body, { timeout: 1000 }).then(
        (answer) => `answered ${answer.string()}`,
        (error: Error) => error.message,
      );
    const subjects = [
      "$JS.API.INFO",
      "$JS.API.STREAM.NAMES",
      `$JS.API.STREAM.INFO.${streams.inbox}`,
      `$JS.API.STREAM.MSG.GET.${streams.inbox}`,
      `$JS.API.DIRECT.GET.${streams.inbox}`,
      `$JS.API.DIRECT.GET.${streams.replies}`,
      `$JS.API.DIRECT.GET.${streams.replies}.${subjectOf.reply(victim.publicKey, "c1")}`,
      `$JS.API.CONSUMER.CREATE.${streams.inbox}`,
      `$JS.API.CONSUMER.CREATE.${streams.replies}.spy.reply.>`,
      `$JS.API.STREAM.PURGE.${streams.personal}`,
      `$JS.API.STREAM.DELETE.${streams.inbox}`,
    ];
    for (const subject of subjects) {
      expect(await ask(subject)).toMatch(/Permissions Violation for Publish/);
    }
    const own = await fetchReply(spy, "c1");
    expect(own).toEqual({ ok: true, value: null });
  });

  it("a sender can't forge a decision, a reply, an acknowledgement or another's submission", async () => {
    const [victim, forger] = [await bench.phone(), await bench.phone()];
    const manager = await jetstreamManager(await bench.keeper());
    const counts = async () =>
      Promise.all(
        Object.values(streams).map(
          async (each) => (await manager.streams.info(each)).state.messages,
        ),
      );
    const before = await counts();
    for (const subject of [
      subjectOf.decision("ines", "c1", "k1"),
      subjectOf.reply(victim.publicKey, "c1"),
      subjectOf.reply(forger.publicKey, "c1"),
      subjectOf.readings(victim.publicKey, "c1", "h1"),
      subjectOf.personal(victim.publicKey, "c1", "h1"),
      subjectOf.pack("ines", "h1"),
      `$KV.${handsBucket}.c1.ines`,
      `_INBOX.${victim.publicKey}.ack`,
    ]) {
      const put = await publish(forger, { subject, hash: subject, body: "forged" });
      expect(put.ok ? "taken" : put.fault.code).toBe("deskForbids");
    }
    expect(await counts()).toEqual(before);
  });

  it("a person decides under the own name only, and can't submit or take out", async () => {
    const desk = await bench.person("otto");
    const put = (subject: string) => publish(desk, { subject, hash: subject, body: "{}" });
    expect((await put(subjectOf.decision("otto", "c1", "k1"))).ok).toBe(true);
    for (const subject of [
      subjectOf.decision("ines", "c1", "k1"),
      subjectOf.readings(desk.publicKey, "c1", "h1"),
      subjectOf.pack("ines", "h1"),
      `$KV.${handsBucket}.c1.ines`,
      `$JS.API.STREAM.DELETE.${streams.inbox}`,
      `$JS.API.STREAM.UPDATE.${streams.inbox}`,
    ]) {
      const refused = await put(subject);
      expect(refused.ok ? "taken" : refused.fault.code).toBe("deskForbids");
    }
    const hands = await new Kvm(jetstream(desk.nats)).open(handsBucket);
    await hands.put("c1.otto", "looking");
    expect((await hands.get("c1.otto"))?.string()).toBe("looking");
  });

  it("100 MB are refused before they are taken, and so is a message just too large", async () => {
    const phone = await bench.phone();
    const message = await sent(phone.publicKey, "large", "x".repeat(1_048_577));
    expect(await publish(phone, message)).toMatchObject({ ok: false, fault: { code: "tooLarge" } });
    // Past the library's own look at the size: the engine itself must refuse it.
    const { info } = phone.nats;
    if (info) Object.assign(info, { max_payload: 2 ** 30 });
    const ended = phone.nats.closed();
    const disconnected = (async () => {
      for await (const { type } of phone.nats.status()) if (type === "disconnect") return true;
      return true;
    })();
    phone.nats.publish(message.subject, new Uint8Array(100 * 1024 ** 2));
    expect(await Promise.race([disconnected, ended.then(() => true)])).toBe(true);
    const others = await bench.phone();
    expect((await publish(others, await sent(others.publicKey, "c2", "still taken"))).ok).toBe(
      true,
    );
  });

  it("a flood fills the inbox and no more: each refusal is a sentence, and after widening all goes on", async () => {
    const flooder = await bench.phone();
    const desk = await bench.person("reading");
    const body = "x".repeat(100_000);
    let refusals = 0;
    for (let place = 0; place < 60; place += 1) {
      const put = await publish(
        flooder,
        await sent(flooder.publicKey, `c${place}`, `${place}${body}`),
      );
      if (!put.ok) {
        refusals += 1;
        expect(put.fault.code).toBe("deskFull");
      }
    }
    expect(refusals).toBeGreaterThan(10);
    const phone = await bench.phone();
    const waiting = await sent(phone.publicKey, "waits", `an honest one ${body}`);
    expect(await publish(phone, waiting)).toMatchObject({
      ok: false,
      fault: { sentence: [expect.stringContaining("no room")] },
    });
    // What is in stays in, and people go on deciding.
    const decision = { subject: subjectOf.decision("reading", "c1", "k1"), hash: "k1", body: "{}" };
    expect((await publish(desk, decision)).ok).toBe(true);
    const wider = { ...bench.state, limits: { ...bench.state.limits, inboxBytes: 64 * 1024 ** 2 } };
    bench.state = wider;
    await makeStreams(wider, await bench.keeper());
    expect((await publish(phone, waiting)).ok).toBe(true);
  });

  it("a wrong credential, one of another desk, and one taken back are refused in a sentence", async () => {
    expect(await personLogin("no credential")).toMatchObject({
      ok: false,
      fault: { code: "deskCredential" },
    });
    const credential = await bench.credential("leaving");
    let thrownOut = false;
    const login = await personLogin(credential);
    const stays = opened(await bench.connectAs(login, { onRefused: () => (thrownOut = true) }));
    const taken = withTakenBack(bench.state, "leaving");
    if (taken === null) throw new Error("no such person");
    const flooder = newPhoneKey();
    const blocked = withTakenBack(taken, flooder.publicKey);
    if (blocked === null) throw new Error("no such phone");
    const oldApps = bench.buildAddress;
    await bench.reload(withNewSenders(blocked));
    await stays.nats.closed();
    expect(thrownOut).toBe(true);
    const refused = { ok: false, fault: { code: "deskRefused" } };
    expect(await bench.connectAs(login, { stay: false })).toMatchObject(refused);
    expect(
      await bench.connectAs(await bench.phoneLogin(newPhoneKey(), oldApps), { stay: false }),
    ).toMatchObject(refused);
    expect(await bench.connectAs(await bench.phoneLogin(flooder), { stay: false })).toMatchObject(
      refused,
    );
    expect((await bench.connectAs(await bench.phoneLogin(), { stay: false })).ok).toBe(true);
  });

  it("nobody there is a sentence too", async () => {
    const login = opened(await bench.phoneLogin());
    const { connect } = await import("@nats-io/transport-node");
    const { connectEngine } = await import("../../src/engine/connection.ts");
    const nobody = await connectEngine({
      servers: "127.0.0.1:1",
      login,
      dial: connect,
      stay: false,
    });
    expect(nobody).toMatchObject({ ok: false, fault: { code: "deskUnreachable" } });
  });
});

import { jetstream, jetstreamManager } from "@nats-io/jetstream";
import { Kvm } from "@nats-io/kv";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { EngineConnection } from "../../src/engine/connection.ts";
import { fetchReply } from "../../src/engine/fetchReply.ts";
import { newPhoneKey, personLogin } from "../../src/engine/login.ts";
import { publish } from "../../src/engine/publish.ts";
import { handsBucket, streams, subjectOf } from "../../src/engine/subjects.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { withNewSenders, withTakenBack } from "../../src/server/deskState.ts";
import { makeStreams } from "../../src/server/streamsMade.ts";
import { EngineBench, engineHere, opened } from "../support/engine/engineBench.ts";
import { sent } from "../support/engine/messages.ts";

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
    const refused = await publish(phone, waiting);
    expect(refused.ok ? "" : inModelUnits(refused.fault.sentence)).toContain("no room");
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

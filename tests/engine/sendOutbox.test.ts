import "fake-indexeddb/auto";
import { connect } from "@nats-io/transport-node";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readDeskAddress } from "../../src/engine/address.ts";
import type { Dial } from "../../src/engine/connection.ts";
import { follow } from "../../src/engine/follow.ts";
import { publish } from "../../src/engine/publish.ts";
import { sendOutbox } from "../../src/engine/sendOutbox.ts";
import { type StreamName, streams, subjectOf, subjectParts } from "../../src/engine/subjects.ts";
import { checkParts, readSentPart } from "../../src/records/exchanged/checkMessages.ts";
import { readingsDigest } from "../../src/records/review/readingsDigest.ts";
import { replyFormat, replyVersion } from "../../src/records/review/reply.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { withNewSenders } from "../../src/server/deskState.ts";
import { OutboxStore } from "../../src/storage/outboxStore.ts";
import { EngineBench, engineHere, opened } from "../support/engine/engineBench.ts";
import { generateRecords } from "../support/generateRecords.ts";

const records = [...generateRecords(2)];

describe.skipIf(!engineHere)("a phone's errand to the desk", () => {
  let bench: EngineBench;
  beforeAll(async () => {
    bench = await EngineBench.start(1);
  }, 60_000);
  afterAll(() => bench?.dispose());

  // The browser's way is the WebSocket; here the same protocol without it.
  const dial: Dial = (options) => connect({ ...options, servers: bench.servers });
  const address = () => opened(readDeskAddress(bench.buildAddress));

  async function queue(store: OutboxStore, place: number) {
    const record = records[place];
    if (!record) throw new Error("no record");
    const parts = await checkParts(record);
    await store.queue(record.id, parts, { digest: readingsDigest(record), whole: "w" });
    return { record, parts };
  }
  const stateOf = async (store: OutboxStore, id: string) =>
    opened(await store.sent()).get(id)?.state;

  async function oneOf(stream: StreamName) {
    const desk = await bench.person(`reader${Math.floor(Math.random() * 1e9)}`);
    return new Promise<{ subject: string; body: string }[]>((resolve) => {
      const following = follow(desk, stream, 0, async (batch) => {
        following.stop();
        resolve([...batch]);
        return true;
      });
    });
  }

  it("waits offline, is sent with a connection, and its answer comes back and is told as fetched", async () => {
    const store = new OutboxStore("phone-one");
    const { record } = await queue(store, 0);
    const nobody: Dial = (options) => connect({ ...options, servers: "127.0.0.1:1" });
    expect(await sendOutbox(store, address(), nobody)).toMatchObject({ code: "deskUnreachable" });
    expect(await stateOf(store, record.id)).toBe("waiting");
    expect(inModelUnits((await store.trouble()) ?? "")).toContain("can't be reached");

    expect(await sendOutbox(store, address(), dial)).toBeNull();
    expect(await stateOf(store, record.id)).toBe("received");
    expect(await store.trouble()).toBeNull();
    const [arrived] = await oneOf(streams.inbox);
    const { by: sender, check } = subjectParts(arrived?.subject ?? "");
    expect(check).toBe(record.id);
    expect(readSentPart(arrived?.body ?? "").ok).toBe(true);

    const desk = await bench.person("ines");
    const reply = {
      format: replyFormat,
      version: replyVersion,
      id: "r1",
      checkId: record.id,
      createdAt: new Date().toISOString(),
      from: "ines",
      kind: "accept",
      vehicle: record.vehicle.label,
      axle: record.axle,
      readings: [],
      text: "Your readings are accepted.",
    };
    const subject = subjectOf.reply(sender, check);
    opened(await publish(desk, { subject, hash: "r1", body: JSON.stringify(reply) }));
    expect(await sendOutbox(store, address(), dial)).toBeNull();
    expect(await stateOf(store, record.id)).toBe("answered");
    const again = await oneOf(streams.inbox);
    expect(again.map((each) => each.subject)).toContain(subjectOf.fetched(sender, check, "r1"));
    const count = again.length;
    expect(await sendOutbox(store, address(), dial)).toBeNull();
    expect(await oneOf(streams.inbox)).toHaveLength(count);
    store.close();
  });

  it("a reply that is none, or about another check, is passed over", async () => {
    const store = new OutboxStore("phone-two");
    const { record } = await queue(store, 1);
    await sendOutbox(store, address(), dial);
    const key = opened(await store.phoneKey(() => ({ publicKey: "", seed: "" })));
    const desk = await bench.person("otto");
    const subject = subjectOf.reply(key.publicKey, record.id);
    opened(await publish(desk, { subject, hash: "bad", body: "no reply" }));
    expect(await sendOutbox(store, address(), dial)).toBeNull();
    expect(await stateOf(store, record.id)).toBe("received");
    store.close();
  });

  it("with an app whose key was renewed it waits, and says what to do", async () => {
    const store = new OutboxStore("phone-three");
    const { record } = await queue(store, 0);
    const old = address();
    await bench.reload(withNewSenders(bench.state));
    expect(await sendOutbox(store, old, dial)).toMatchObject({ code: "deskRefused" });
    expect(await stateOf(store, record.id)).toBe("waiting");
    expect(inModelUnits((await store.trouble()) ?? "")).toContain("Update Stopfit");
    expect(await sendOutbox(store, address(), dial)).toBeNull();
    expect(await stateOf(store, record.id)).toBe("received");
    store.close();
  });
});

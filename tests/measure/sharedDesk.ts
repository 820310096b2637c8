import "fake-indexeddb/auto";
import type { Pool } from "../../src/compute/pool.ts";
import { poolAnswer } from "../../src/compute/poolWork.ts";
import { follow } from "../../src/engine/follow.ts";
import { newPhoneKey } from "../../src/engine/login.ts";
import { publish } from "../../src/engine/publish.ts";
import { streams, subjectOf } from "../../src/engine/subjects.ts";
import { checkParts } from "../../src/records/exchanged/checkMessages.ts";
import { fromStreams } from "../../src/screens/desk/shared/fromStreams.ts";
import { openDeskStore } from "../../src/storage/deskStore.ts";
import { EngineBench, engineHere, opened } from "../support/engine/engineBench.ts";
import { generateRecords } from "../support/generateRecords.ts";

/*
 * Speed of a shared desk: three nodes on this machine, replicas 3, files on its disk. `-- 10000` checks, else 10,000.
 * The desk here is the app's own code in Node, its store in memory: reading and keeping as in a browser, without a screen.
 */
if (!engineHere) throw new Error("There is no nats-server here.");
const count = Number(process.argv[2] ?? 10_000);
const senders = 20;
const seconds = (since: number) => (performance.now() - since) / 1000;

const pool: Pool = {
  size: 1,
  run: poolAnswer,
  cancel: () => undefined,
  dispose: () => undefined,
};

const bench = await EngineBench.start(3, { inboxBytes: 2 * 1024 ** 3 });
try {
  const records = [...generateRecords(count)];
  const parts = await Promise.all(records.map((record) => checkParts(record)));
  const bytes = parts.reduce((sum, { readings }) => sum + readings.body.length, 0);
  console.log(`${count} checks, ${(bytes / count / 1000).toFixed(1)} kB of readings each`);

  const phones = await Promise.all(
    Array.from({ length: senders }, async () => {
      const key = newPhoneKey();
      return { key, phone: await bench.phone(key) };
    }),
  );
  let next = 0;
  const sending = performance.now();
  await Promise.all(
    phones.map(async ({ key, phone }) => {
      for (let at = next++; at < count; at = next++) {
        const record = records[at];
        const readings = parts[at]?.readings;
        if (!record || !readings) continue;
        const subject = subjectOf.readings(key.publicKey, record.id, readings.hash);
        opened(await publish(phone, { subject, ...readings }));
      }
    }),
  );
  const took = seconds(sending);
  console.log(
    `acknowledged with three replicas: ${Math.round(count / took)} a second, from ${senders} senders one after another (${took.toFixed(1)} s)`,
  );

  const desk = await bench.person("ines");
  const store = opened(await openDeskStore("measured"));
  const catching = performance.now();
  await new Promise<void>((resolve) => {
    let got = 0;
    const following = follow(desk, streams.inbox, 0, async (batch) => {
      const things = await fromStreams(pool, batch);
      const reached = batch.at(-1)?.sequence ?? 0;
      opened(await store.shared.take(streams.inbox, reached, things));
      got += batch.length;
      if (got >= count) {
        following.stop();
        resolve();
      }
      return true;
    });
  });
  const rows = opened(await store.submissions()).length;
  const caught = seconds(catching);
  console.log(
    `catch-up of ${count}: ${caught.toFixed(1)} s, read, checked and kept, on one core; ${rows} rows, lost ${count - rows}`,
  );

  const times: number[] = [];
  const [first] = phones;
  let seen: (() => void) | null = null;
  const following = follow(
    desk,
    streams.inbox,
    opened(await store.shared.position(streams.inbox)),
    async (batch) => {
      const things = await fromStreams(pool, batch);
      opened(await store.shared.take(streams.inbox, batch.at(-1)?.sequence ?? 0, things));
      seen?.();
      return true;
    },
  );
  await new Promise((resolve) => setTimeout(resolve, 300));
  for (const record of generateRecords(40, 99)) {
    if (!first) break;
    const { readings } = await checkParts(record);
    const subject = subjectOf.readings(first.key.publicKey, record.id, readings.hash);
    const since = performance.now();
    const kept = new Promise<void>((resolve) => {
      seen = resolve;
    });
    opened(await publish(first.phone, { subject, ...readings }));
    await kept;
    times.push(performance.now() - since);
  }
  following.stop();
  times.sort((a, b) => a - b);
  console.log(
    `from sent to kept at a review desk: median ${times[20]?.toFixed(0)} ms, slowest ${times.at(-1)?.toFixed(0)} ms`,
  );
} finally {
  await bench.dispose();
}
process.exit(0);

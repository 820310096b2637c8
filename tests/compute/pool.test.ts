import { readFileSync } from "node:fs";
import { deflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { createPool, type PoolWorkerLike, poolSize } from "../../src/compute/pool.ts";
import type { PoolReply, PoolRequest, ReadTask } from "../../src/compute/poolMessages.ts";
import { poolWork } from "../../src/compute/poolWork.ts";
import { assessFitment } from "../../src/physics/assess.ts";
import { crc32 } from "../../src/records/bytes/checksum.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { fitmentOf } from "../../src/records/check/fitmentOf.ts";
import type { PackPlatforms, Platform } from "../../src/records/pack/pack.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";
import { payloadText } from "../../src/sharing/payload.ts";
import { shareLink } from "../../src/sharing/shareLink.ts";
import { demoRecord } from "../support/demoRecords.ts";

const text = readFileSync("demo-data/checks/arm-needs-taller.json", "utf8");
const record = demoRecord("arm-needs-taller");

/** A worker in this thread that answers when it is told to. */
class HandWorker implements PoolWorkerLike {
  static started: HandWorker[] = [];
  onmessage: PoolWorkerLike["onmessage"] = null;
  onerror: PoolWorkerLike["onerror"] = null;
  onmessageerror: PoolWorkerLike["onmessageerror"] = null;
  readonly asked: PoolRequest[] = [];
  ended = false;

  constructor() {
    HandWorker.started.push(this);
  }

  postMessage(message: PoolRequest): void {
    this.asked.push(structuredClone(message));
  }

  answer(): void {
    const request = this.asked.at(-1);
    if (request?.kind !== "task" || this.ended) throw new Error("nothing to answer");
    const told = this.asked.find(({ kind }) => kind === "pack");
    const pack = told?.kind === "pack" ? told.pack : null;
    const { ticket, task } = request;
    // No task here names a file or a part of one.
    const data: PoolReply = { ticket, result: poolWork(task as ReadTask, pack) };
    this.onmessage?.(new MessageEvent("message", { data }));
  }

  terminate(): void {
    this.ended = true;
  }
}

function handPool(size: number) {
  HandWorker.started = [];
  return createPool({ size, startWorker: () => new HandWorker() });
}

const read = { kind: "read", text, what: "The file", way: "file" } as const;

describe("the pool", () => {
  it("leaves one core to the screen, and has one worker at least", () => {
    expect([1, 2, 8, undefined].map(poolSize)).toEqual([1, 1, 7, 1]);
  });

  it("hands out no more than it has hands for, and every piece comes to its own asker", async () => {
    const pool = handPool(2);
    const texts = [text, "{", text];
    const results = texts.map((each) => pool.run({ ...read, text: each }));
    expect(HandWorker.started.map(({ asked }) => asked.length)).toEqual([1, 1]);
    HandWorker.started[1]?.answer();
    HandWorker.started[1]?.answer();
    HandWorker.started[0]?.answer();
    const kinds = (await Promise.all(results)).map(
      (result) => result.kind === "read" && result.items.map(({ ok }) => ok),
    );
    expect(kinds).toEqual([[true], [false], [true]]);
    pool.dispose();
    expect(HandWorker.started.every(({ ended }) => ended)).toBe(true);
  });

  it("a cancelled piece ends as such, its worker with it, and the pool works on", async () => {
    const pool = handPool(1);
    const [under, waiting] = [pool.run(read), pool.run(read)];
    pool.cancel();
    expect([await under, await waiting]).toMatchObject([
      { kind: "failed", fault: { code: "cancelled" } },
      { kind: "failed", fault: { code: "cancelled" } },
    ]);
    expect(HandWorker.started[0]?.ended).toBe(true);
    const after = pool.run(read);
    HandWorker.started[1]?.answer();
    expect(await after).toMatchObject({ kind: "read" });
  });

  it("a worker that is lost costs its own piece and no other", async () => {
    const pool = handPool(1);
    const [lost, next] = [pool.run(read), pool.run(read)];
    HandWorker.started[0]?.onerror?.(new Event("error") as ErrorEvent);
    expect(await lost).toMatchObject({ kind: "failed", fault: { code: "workerLost" } });
    HandWorker.started[1]?.answer();
    expect(await next).toMatchObject({ kind: "read" });
  });

  it("where no worker can be started every piece is told, and none waits for ever", async () => {
    const pool = createPool({
      size: 1,
      startWorker: () => {
        throw new Error("no workers here");
      },
    });
    const results = await Promise.all([pool.run(read), pool.run(read)]);
    expect(results.map(({ kind }) => kind)).toEqual(["failed", "failed"]);
  });
});

describe("what the pool does", () => {
  it("keeps a file's text to the last character and computes what `assess` does", () => {
    const spaced = `\ufeff ${text}\n\n`;
    const result = poolWork({ ...read, text: spaced });
    expect(result).toMatchObject({
      kind: "read",
      items: [{ ok: true, value: { text: spaced, facts: { checkId: record.id } } }],
    });
    const computed = poolWork({ kind: "compute", text: spaced });
    const assessed = assessFitment(fitmentOf(record));
    expect(assessed.ok && computed.kind === "computed" && computed.assessment).toEqual(
      assessed.ok && assessed.value,
    );
  });

  it("holds readings against the pack that its workers were told of, once each", async () => {
    const platform: Platform = {
      id: "lane-van",
      label: "Lane van",
      axle: record.axle,
      layout: record.layout,
      limits: [],
      usualStop: null,
    };
    const onPlatform = { ...record, vehicle: { ...record.vehicle, platformId: platform.id } };
    const task = { kind: "compute", text: JSON.stringify(onPlatform) } as const;
    const odd = async (pack?: PackPlatforms) => {
      HandWorker.started = [];
      const pool = createPool({
        size: 1,
        startWorker: () => new HandWorker(),
        ...(pack && { pack }),
      });
      const results = [pool.run(task), pool.run(task)];
      HandWorker.started[0]?.answer();
      HandWorker.started[0]?.answer();
      const [, last] = await Promise.all(results);
      expect(HandWorker.started[0]?.asked.filter(({ kind }) => kind === "pack")).toHaveLength(
        pack ? 1 : 0,
      );
      return last?.kind === "computed" ? last.computed.odd : null;
    };
    const none = await odd();
    expect(await odd({ platforms: [platform] })).toBe(none);
    const strut: Platform = { ...platform, layout: { kind: "strut", readings: {} } };
    expect(await odd({ platforms: [strut] })).toBe((none ?? 0) + 1);
  });

  it("whatever verdict the file claims is ignored", () => {
    const claimed = JSON.stringify({ ...record, verdict: "ok", lastVerdict: "ok" });
    const result = poolWork({ kind: "compute", text: claimed });
    expect(result.kind === "computed" && result.computed.verdict).toBe("no");
  });

  it("finds every link of a message, and says which is damaged", () => {
    const link = (each: CheckRecord) => {
      const made = shareLink(each, "https://app.example/");
      if (!made.ok) throw new Error(made.fault.code);
      return made.value.address;
    };
    const other = { ...record, notes: "another" };
    const message = `One: ${link(record)} two: ${link(other)} and cut: ${link({ ...record, notes: "cut" }).slice(0, -40)}`;
    const result = poolWork({ ...read, text: message, way: "link" });
    const items = result.kind === "read" ? result.items : [];
    expect(items.map(({ ok }) => ok)).toEqual([true, true, false]);
    const [first] = items;
    expect(first?.ok && JSON.parse(first.value.text)).toEqual(record);
  });

  it("opens five hundred links of one message, and says that there are more", () => {
    const message = (count: number) =>
      Array.from({ length: count }, (_, at) => `#/open/2b${"A".repeat(30)}${at}\nHello`).join("\n");
    const itemsOf = (count: number) => {
      const result = poolWork({ ...read, text: message(count), way: "link" });
      return result.kind === "read" ? result.items.map((item) => !item.ok && item.fault.code) : [];
    };
    expect(itemsOf(500)).not.toContain("tooManyLinks");
    expect(itemsOf(500)).toHaveLength(500);
    expect(itemsOf(501)).toHaveLength(501);
    expect(itemsOf(600)).toHaveLength(501);
    expect(itemsOf(600).indexOf("tooManyLinks")).toBe(500);
  });

  it.each([
    ["nothing", ""],
    ["not JSON", "{ half"],
    ["cut in the middle", text.slice(0, text.length / 2)],
    ["deep nesting", `${'{"a":'.repeat(100_000)}1${"}".repeat(100_000)}`],
    ["a record with 10 000 limits", withLimits(10_000)],
    ["a link that unpacks to 25 MB", bombLink()],
    ["words", "Hello, no link here"],
    ["a list", "[1, 2, 3]"],
  ])("%s gets a sentence and harms nothing", (_, bad) => {
    const result = poolWork({ ...read, text: bad });
    expect(result.kind).toBe("read");
    const items = result.kind === "read" ? result.items : [];
    expect(items).toHaveLength(1);
    const [item] = items;
    if (item?.ok !== false) throw new Error("it was taken for a check");
    const sentence = inModelUnits(item.fault.sentence);
    expect(sentence).toMatch(/\.$/);
    expect(sentence.length).toBeLessThan(700);
  });
});

function withLimits(count: number): string {
  const limit = { kind: "metal", at: "wheel", reading: { values: [90], tol: 1 } };
  const limits = Array.from({ length: count }, () => limit);
  return JSON.stringify({
    ...record,
    corners: record.corners.map((corner) => ({ ...corner, limits })),
  });
}

function bombLink(): string {
  const body = new Uint8Array(deflateRawSync(Buffer.alloc(25_000_000), { level: 9 }));
  const frame = { photosLeftOut: 0, parts: 1, part: 0, mark: crc32(body), body };
  return `https://app.example/#/open/${payloadText(frame, "letters")}`;
}

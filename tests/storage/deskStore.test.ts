import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { deskChecks } from "../../src/records/review/decision.ts";
import { ReplyStore } from "../../src/storage/replyStore.ts";
import {
  allIncoming,
  computed,
  decision,
  desk,
  incoming,
  keyOf,
  recordAt,
} from "./support/desk.ts";
import { freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const first = recordAt(0);

describe("submissions", () => {
  it("are kept to the last character; the same content again is here already", async () => {
    const store = await desk();
    const text = ` ${JSON.stringify(first, null, 4)}\n`;
    expect(value(await store.add([incoming(first, text)]))).toMatchObject({ added: 1, present: 0 });
    expect(value(await store.add([incoming(first)]))).toMatchObject({ added: 0, present: 1 });
    const [kept, ...more] = value(await store.submissions());
    expect(more).toEqual([]);
    expect(value(await store.text(kept?.key ?? ""))).toBe(text);
  });

  it("another content under the same id is a version beside it, later than it", async () => {
    const store = await desk();
    await store.add([incoming(first), incoming({ ...first, notes: "again" })]);
    const versions = value(await store.versions(first.id));
    expect(versions).toHaveLength(2);
    const times = versions.map(({ receivedAt }) => receivedAt);
    expect(new Set(times).size).toBe(2);
  });

  it("contents with one digest are all kept", async () => {
    const store = await desk();
    const one = incoming(first);
    const other = { ...incoming({ ...first, notes: "other" }), facts: one.facts };
    const third = { ...incoming({ ...first, notes: "third" }), facts: one.facts };
    const key = keyOf(first);
    expect(value(await store.add([one, other, third])).keys).toEqual([key, `${key}+`, `${key}++`]);
    expect(value(await store.add([other, third, one]))).toMatchObject({ added: 0, present: 3 });
    expect(value(await store.text(`${key}+`))).toBe(other.text);
  });

  it("a batch is kept whole or not at all", async () => {
    const store = await desk();
    const bad = { ...incoming(recordAt(1)), text: (() => "") as unknown as string };
    const added = await store.add([incoming(first), bad]);
    expect(added.ok).toBe(false);
    expect(value(await store.submissions())).toEqual([]);
  });

  it("wait to be computed until their result is kept, after a reload too", async () => {
    const store = await desk();
    await store.add(allIncoming);
    const keys = value(await store.uncomputed(10));
    expect(keys).toHaveLength(5);
    await store.keepResults([
      {
        key: keys[0] ?? "",
        computed,
        assessment: null,
      },
    ]);
    store.close();
    const again = await desk();
    expect(value(await again.countUncomputed())).toBe(4);
    expect(value(await again.submission(keys[0] ?? ""))?.computed?.verdict).toBe("no");
  });

  it("are computed anew once where they were computed by other demands, and only then", async () => {
    const store = await desk();
    await store.add(allIncoming);
    const keepAll = async () => {
      const keys = value(await store.uncomputed(10));
      await store.keepResults(keys.map((key) => ({ key, computed, assessment: null })));
    };
    await keepAll();
    expect(value(await store.judgeBy("{}"))).toBe(true);
    expect(value(await store.countUncomputed())).toBe(5);
    const [submission] = value(await store.submissions());
    expect(submission).not.toHaveProperty("computed");
    await keepAll();
    expect(value(await store.judgeBy("{}"))).toBe(false);
    expect(value(await store.countUncomputed())).toBe(0);
    expect(value(await store.judgeBy('{"daily":{"reserveMm":8}}'))).toBe(true);
    expect(value(await store.countUncomputed())).toBe(5);
  });

  it("are read a page at a time, every one once", async () => {
    const store = await desk();
    await store.add(allIncoming);
    const sizes: number[] = [];
    const ids = new Set<string>();
    for await (const page of store.wholeSubmissions(2)) {
      sizes.push(value(page).length);
      for (const { submission, text } of value(page)) {
        expect(JSON.parse(text).id).toBe(submission.checkId);
        ids.add(submission.checkId);
      }
    }
    expect(sizes).toEqual([2, 2, 1]);
    expect(ids.size).toBe(5);
  });
});

describe("decisions", () => {
  it("of two tabs are both kept, and one comes in only once", async () => {
    const [one, other] = [await desk(), await desk()];
    await Promise.all([
      one.decide([decision("a")]),
      other.decide([decision("b", { at: "2026-05-03T10:00:00.001Z" })]),
    ]);
    expect(value(await one.decide([decision("a", { at: "2020-01-01T00:00:00.000Z" })]))).toEqual(
      [],
    );
    const kept = value(await other.decisions());
    expect(kept.map(({ key, at }) => [key, at])).toEqual([
      ["a", "2026-05-03T10:00:00.000Z"],
      ["b", "2026-05-03T10:00:00.001Z"],
    ]);
  });
});

describe("imports", () => {
  it("that were begun and never ended are known, with what of them still waits, in its order", async () => {
    const store = await desk();
    const begun = value(await store.inbox.begin());
    const entry = (place: number) => ({
      importKey: begun.key,
      place,
      name: `file ${place}`,
      what: `The file ${place}`,
      way: "file" as const,
      text: "{}",
    });
    await store.inbox.put([entry(10), entry(2), entry(1)]);
    expect(value(await store.inbox.begun())).toEqual([begun]);
    const next = value(await store.inbox.next(begun.key, 2));
    expect(next.map(({ place }) => place)).toEqual([1, 2]);
    // Of long texts no more than fit in memory, and one at least.
    const long = (place: number) => ({ ...entry(place), text: "x".repeat(2_100_000) });
    await store.inbox.put([long(1), { ...long(2), text: "x".repeat(9_000_000) }, long(10)]);
    const places = async (most: number) =>
      value(await store.inbox.next(begun.key, most)).map(({ place }) => place);
    expect(await places(50)).toEqual([1, 2]);
    await store.inbox.put([{ ...long(1), text: "x".repeat(9_000_000) }]);
    expect(await places(50)).toEqual([1]);
    await store.inbox.put([entry(1), entry(2), entry(10)]);
    expect(await places(50)).toEqual([1, 2, 10]);
    await store.inbox.end(begun.key);
    expect(value(await store.inbox.begun())).toEqual([]);
    expect(value(await store.inbox.next(begun.key, 10))).toEqual([]);
  });
});

describe("the list in one piece", () => {
  it("is what the submissions are, and says when it no longer is", async () => {
    const store = await desk();
    await store.add(allIncoming);
    expect(value(await store.snapshot())).toBeNull();
    const renewed = value(await store.renewSnapshot());
    expect(value(await store.snapshot())).toEqual({ submissions: renewed, fresh: true });
    const [top] = renewed;
    const [whole] = value(await store.submissions());
    expect(whole).toMatchObject(top ?? {});
    await store.keepResults([{ key: top?.key ?? "", computed, assessment: null }]);
    expect(value(await store.snapshot())).toEqual({ submissions: renewed, fresh: false });
    await store.renewSnapshot();
    const again = value(await store.snapshot());
    expect(again?.submissions.find(({ key }) => key === top?.key)?.computed).toEqual({
      verdict: "no",
      odd: 2,
    });
  });

  it("the top of it is kept beside", async () => {
    const store = await desk();
    expect(value(await store.first())).toBeNull();
    await store.add(allIncoming);
    const checks = deskChecks(value(await store.renewSnapshot()), []);
    await store.keepFirst({ count: 5, checks });
    expect(value(await store.first())).toEqual({ count: 5, checks });
  });
});

describe("replies on the phone", () => {
  const reply = (id: string, createdAt: string) => ({
    id,
    storedId: "check",
    before: {},
    same: [],
    closed: 0 as const,
    reply: {
      format: "stopfit-reply" as const,
      version: 1 as const,
      id,
      checkId: "check",
      createdAt,
      from: "M. Lind",
      kind: "askAgain" as const,
      vehicle: "Marlow",
      axle: "front" as const,
      readings: ["left.gap" as const],
      text: "Hello",
    },
  });

  it("the newest open one counts; opened twice it stays as it is; closed it is gone", async () => {
    const store = new ReplyStore();
    await store.add(reply("a", "2026-05-03T10:00:00.000Z"));
    await store.add(reply("b", "2026-05-04T10:00:00.000Z"));
    await store.markSame("b", "left.gap");
    const again = value(await store.add(reply("b", "2026-05-04T10:00:00.000Z")));
    expect(again.same).toEqual(["left.gap"]);
    expect(value(await store.openFor("check"))?.id).toBe("b");
    await store.close("b");
    expect(value(await store.openFor("check"))?.id).toBe("a");
    expect(value(await store.openFor("other"))).toBeNull();
  });
});

import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import type { DeskStore } from "../../src/storage/deskStore.ts";
import {
  allIncoming,
  assessment,
  computed,
  decision,
  desk,
  incoming,
  keyOf,
  keysOf,
  recordAt,
} from "./support/desk.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import { at, bare, name, readings } from "./support/shared.ts";
import { freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const [one, two, three] = [recordAt(0), recordAt(1), recordAt(2)];
const keys = keysOf(allIncoming);

/** Keys in each store of the desk's database. */
async function keptIn(kind: string): Promise<string[]> {
  const rows = (await rowsOf("stopfit-desk", kind)) as { readonly key: string }[];
  return rows.map(({ key }) => key);
}

/** A check that came by the shared desk, its name apart. */
async function takeShared(store: DeskStore): Promise<string> {
  value(await store.shared.take("INBOX", 1, [readings(1), name]));
  return keyOf(bare);
}

const nameIn = (text: string | null): unknown => JSON.parse(text ?? "").author.name;

describe("what was added", () => {
  it("is told by its keys, in the order given, and how many were here already", async () => {
    const store = await desk();
    value(await store.add([incoming(two)]));
    expect(value(await store.add([incoming(three), incoming(two), incoming(one)]))).toEqual({
      added: 2,
      keys: [keyOf(three), keyOf(one)],
      present: 1,
    });
  });

  it("has when and how it came, as far as that was told, and waits to be computed", async () => {
    const store = await desk();
    const before = new Date().toISOString();
    const told = { sentAt: at, from: "kim@hale.example", place: 3, photosLeftOut: 2 };
    value(await store.add([{ ...incoming(one), ...told, way: "backup", receivedAt: at }]));
    value(await store.add([incoming(two)]));
    const known = { ...incoming(one).facts, key: keyOf(one), isComputed: 0 };
    expect(value(await store.submission(keyOf(one)))).toEqual({
      ...known,
      ...told,
      way: "backup",
      receivedAt: at,
    });
    const plain = value(await store.submission(keyOf(two)));
    expect((plain?.receivedAt ?? "") >= before).toBe(true);
    expect(Object.keys(plain ?? {})).not.toContain("sentAt");
    expect(Object.keys(plain ?? {})).not.toContain("from");
    expect(Object.keys(plain ?? {})).not.toContain("place");
  });

  it("is kept with what is done alongside, which knows what was added, or neither is", async () => {
    const store = await desk();
    const counts = vi.fn();
    const note = { key: "a", startedAt: at, stage: "taking" as const, total: 1 };
    const noted = { taken: 1, added: 1, present: 0, refusedCount: 0, refused: [] };
    value(
      await store.add([incoming(one)], async (transaction, added) => {
        counts(added);
        await transaction.objectStore("imports").put({ ...note, counts: noted });
      }),
    );
    expect(counts.mock.calls).toEqual([[{ added: 1, keys: [keyOf(one)], present: 0 }]]);
    expect(value(await store.inbox.begun())).toHaveLength(1);
    const failed = await store.add([incoming(two)], async () => {
      throw new DOMException("full", "QuotaExceededError");
    });
    expect(failed).toMatchObject({ ok: false, fault: { code: "storeFull" } });
    expect(await keptIn("submissions")).toEqual([keyOf(one)]);
    expect(await keptIn("texts")).toEqual([keyOf(one)]);
  });

  it("is no version of another check", async () => {
    const store = await desk();
    value(await store.add([incoming(one), incoming(two), incoming({ ...one, notes: "again" })]));
    const versions = value(await store.versions(one.id));
    expect(versions.map(({ checkId }) => checkId)).toEqual([one.id, one.id]);
    expect(value(await store.versions("unknown"))).toEqual([]);
  });

  it("that is not here is none", async () => {
    const store = await desk();
    expect(value(await store.submission("unknown"))).toBeNull();
    expect(value(await store.text("unknown"))).toBeNull();
    expect(value(await store.assessment("unknown"))).toBeNull();
    expect(value(await store.judged(["unknown"]))).toEqual([{ text: "", assessment: null }]);
  });
});

describe("texts and answers", () => {
  it("come in the order asked for, an answer only where there is one", async () => {
    const store = await desk();
    value(await store.add(allIncoming));
    const [a = "", b = "", c = ""] = keys;
    const results = [
      { key: c, computed, assessment: assessment("no") },
      { key: a, computed, assessment: assessment("ok") },
      { key: b, computed, assessment: null },
    ];
    value(await store.keepResults(results));
    expect(value(await store.assessment(a))).toEqual(assessment("ok"));
    expect(value(await store.assessment(b))).toBeNull();
    expect(await keptIn("assessments")).toEqual([a, c]);
    expect(value(await store.judged([c, b, a]))).toEqual([
      { text: allIncoming[2]?.text, assessment: assessment("no") },
      { text: allIncoming[1]?.text, assessment: null },
      { text: allIncoming[0]?.text, assessment: assessment("ok") },
    ]);
  });

  it("have the name that came apart by the shared desk, wherever they are read", async () => {
    const store = await desk();
    const key = await takeShared(store);
    expect(nameIn(value(await store.text(key)))).toBe("Kim");
    const [judged] = value(await store.judged([key]));
    expect(nameIn(judged?.text ?? null)).toBe("Kim");
    for await (const page of store.wholeSubmissions(5)) {
      expect(value(page).map(({ text }) => nameIn(text))).toEqual(["Kim"]);
    }
  });

  it("of what came by a file are the very text in a backup, though a phone sent it too", async () => {
    const store = await desk();
    const text = ` ${JSON.stringify(bare)}\n`;
    value(await store.add([incoming(bare, text)]));
    await takeShared(store);
    for await (const page of store.wholeSubmissions(5)) {
      expect(value(page).map((whole) => whole.text)).toEqual([text]);
    }
  });
});

describe("results", () => {
  it("are asked for no more at a time than is wanted", async () => {
    const store = await desk();
    value(await store.add(allIncoming));
    expect(value(await store.uncomputed(2))).toHaveLength(2);
    expect(value(await store.countUncomputed())).toBe(5);
  });

  it("of what has gone meanwhile are not kept, the others are", async () => {
    const store = await desk();
    value(await store.add([incoming(one)]));
    const results = ["unknown", keyOf(one)].map((key) => ({
      key,
      computed,
      assessment: assessment("no"),
    }));
    value(await store.keepResults(results));
    expect(await keptIn("submissions")).toEqual([keyOf(one)]);
    expect(await keptIn("assessments")).toEqual([keyOf(one)]);
    expect(value(await store.submission(keyOf(one)))).toMatchObject({ computed, isComputed: 1 });
  });

  it("by other demands are gone with their answers, and the list in one piece is no longer so", async () => {
    const store = await desk();
    value(await store.judgeBy("{}"));
    value(await store.add([incoming(one), incoming(two)]));
    value(await store.keepResults([{ key: keyOf(one), computed, assessment: assessment("no") }]));
    value(await store.renewSnapshot());
    expect(value(await store.judgeBy("{}"))).toBe(false);
    expect(value(await store.snapshot())?.fresh).toBe(true);
    expect(value(await store.assessment(keyOf(one)))).toEqual(assessment("no"));
    expect(value(await store.judgeBy('{"daily":{}}'))).toBe(true);
    expect(value(await store.snapshot())?.fresh).toBe(false);
    expect(value(await store.assessment(keyOf(one)))).toBeNull();
    expect((await keptIn("submissions")).sort()).toEqual([keyOf(one), keyOf(two)].sort());
  });
});

describe("the list in one piece", () => {
  it("of an empty desk is empty and true", async () => {
    const store = await desk();
    expect(value(await store.renewSnapshot())).toEqual([]);
    expect(value(await store.snapshot())).toEqual({ submissions: [], fresh: true });
  });

  it("stays true where nothing new came, and is no longer where something did", async () => {
    const store = await desk();
    value(await store.add([incoming(one)]));
    value(await store.renewSnapshot());
    value(await store.add([incoming(one)]));
    value(await store.takeOut({ submissions: [], decisions: ["a"] }));
    expect(value(await store.snapshot())?.fresh).toBe(true);
    value(await store.add([incoming(two)]));
    expect(value(await store.snapshot())?.fresh).toBe(false);
    value(await store.renewSnapshot());
    value(await store.takeOut({ submissions: [keyOf(two)], decisions: [] }));
    const old = value(await store.snapshot());
    expect([old?.submissions.length, old?.fresh]).toEqual([2, false]);
    value(await store.renewSnapshot());
    const renewed = value(await store.snapshot());
    expect(renewed?.submissions.map(({ key }) => key)).toEqual([keyOf(one)]);
    expect(renewed?.fresh).toBe(true);
  });

  it("that can't be read is a fault, and the one before stays", async () => {
    const store = await desk();
    value(await store.add([incoming(one)]));
    value(await store.renewSnapshot());
    const refused = vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
      throw new DOMException("gone", "NotFoundError");
    });
    expect(await store.renewSnapshot()).toMatchObject({
      ok: false,
      fault: { code: "storeFailed" },
    });
    refused.mockRestore();
    expect(value(await store.snapshot())?.submissions).toHaveLength(1);
  });
});

describe("pages of whole submissions", () => {
  const sizes = async (store: DeskStore, size: number) => {
    const found: number[] = [];
    for await (const page of store.wholeSubmissions(size)) found.push(value(page).length);
    return found;
  };

  it("are as many as are needed, none of them empty", async () => {
    const store = await desk();
    expect(await sizes(store, 2)).toEqual([]);
    value(await store.add(allIncoming.slice(0, 4)));
    expect(await sizes(store, 2)).toEqual([2, 2]);
    expect(await sizes(store, 3)).toEqual([3, 1]);
    expect(await sizes(store, 4)).toEqual([4]);
  });

  it("have each text with its own submission, one whose text is gone with none", async () => {
    const store = await desk();
    value(await store.add(allIncoming));
    await new Promise<void>((resolve) => {
      const opening = indexedDB.open("stopfit-desk");
      opening.onsuccess = () => {
        const transaction = opening.result.transaction("texts", "readwrite");
        transaction.objectStore("texts").delete(keys[1] ?? "");
        transaction.oncomplete = () => {
          opening.result.close();
          resolve();
        };
      };
    });
    const found: [string, string][] = [];
    for await (const page of store.wholeSubmissions(2)) {
      for (const { submission, text } of value(page)) found.push([submission.key, text]);
    }
    expect(found).toEqual(
      allIncoming.map(({ text }, index) => [keys[index], index === 1 ? "" : text]),
    );
  });

  it("end with the fault that broke them off", async () => {
    const store = await desk();
    value(await store.add(allIncoming));
    const codes: string[] = [];
    for await (const page of store.wholeSubmissions(2)) {
      codes.push(page.ok ? "" : page.fault.code);
      vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
        throw new DOMException("gone", "NotFoundError");
      });
    }
    expect(codes).toEqual(["", "storeFailed"]);
  });
});

describe("everything here", () => {
  it("is known by its keys", async () => {
    const store = await desk();
    value(await store.add([incoming(one), incoming(two)]));
    value(await store.decide([decision("a"), decision("b")]));
    expect(value(await store.keys())).toEqual({
      submissions: new Set([keyOf(one), keyOf(two)]),
      decisions: new Set(["a", "b"]),
    });
  });

  it("has the decisions of each check apart, and tells which of several were new", async () => {
    const store = await desk();
    const others = decision("b", { checkId: two.id });
    expect(value(await store.decide([decision("a"), others]))).toEqual(["a", "b"]);
    expect(value(await store.decide([decision("c"), others]))).toEqual(["c"]);
    expect(value(await store.decisionsOf(one.id)).map(({ key }) => key)).toEqual(["a", "c"]);
    expect(value(await store.decisionsOf(two.id))).toEqual([others]);
  });

  it("goes again as far as a restore had just brought it, and no further", async () => {
    const store = await desk();
    value(await store.add([incoming(one), incoming(two)]));
    const results = [one, two].map((record) => ({
      key: keyOf(record),
      computed,
      assessment: assessment("no"),
    }));
    value(await store.keepResults(results));
    value(await store.decide([decision("a"), decision("b")]));
    value(await store.takeOut({ submissions: [keyOf(one)], decisions: ["b"] }));
    for (const kind of ["submissions", "texts", "assessments"]) {
      expect(await keptIn(kind), kind).toEqual([keyOf(two)]);
    }
    expect(await keptIn("decisions")).toEqual(["a"]);
  });
});

import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import type { DeskChange, ToShare } from "../../src/storage/deskDatabase.ts";
import { desk } from "./support/desk.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import {
  at,
  bare,
  decided,
  decision,
  listed,
  other,
  waiting,
  whoIn,
  withTwo,
} from "./support/shared.ts";
import { freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

describe("what is personal", () => {
  it("is erased with its check, and no other check's", async () => {
    const store = await withTwo();
    expect([await whoIn(store, bare), await whoIn(store, other)]).toEqual(["Kim", "Lee"]);
    value(await store.shared.take("DECISIONS", 1, [{ kind: "erased", checkId: bare.id }]));
    expect([await whoIn(store, bare), await whoIn(store, other)]).toEqual(["", "Lee"]);
  });

  it("goes once it is older than it may be, and no other check's", async () => {
    const store = await withTwo();
    value(await store.shared.forgetBefore(at));
    expect(await whoIn(store, bare)).toBe("Kim");
    value(await store.shared.forgetBefore("2026-05-04T08:59:59.000Z"));
    expect([await whoIn(store, bare), await whoIn(store, other)]).toEqual(["", "Lee"]);
    expect((await listed(store)).map(({ photos }) => photos)).toEqual([0, 0]);
  });

  it.each(["erased", "too old"])("and %s is in no list that is kept either", async (how) => {
    const store = await withTwo();
    value(await store.renewSnapshot());
    value(await store.keepFirst({ count: 2, checks: [] }));
    const told: DeskChange[] = [];
    store.onShared((change) => told.push(change));
    if (how === "erased") {
      value(await store.shared.take("DECISIONS", 1, [{ kind: "erased", checkId: bare.id }]));
    } else value(await store.shared.forgetBefore("2026-05-04T08:59:59.000Z"));
    expect(told).toEqual(["submissions"]);
    expect(value(await store.snapshot())).toBeNull();
    expect(value(await store.first())).toBeNull();
    const renewed = value(await store.renewSnapshot());
    expect(renewed.map(({ who }) => who).sort()).toEqual(["", "Lee"]);
    expect(value(await store.snapshot())?.fresh).toBe(true);
  });

  it("leaves the list as it is where nothing of it is too old", async () => {
    const store = await withTwo();
    value(await store.renewSnapshot());
    const told = vi.fn();
    store.onShared(told);
    value(await store.shared.forgetBefore(at));
    expect(told).not.toHaveBeenCalled();
    expect(value(await store.snapshot())?.fresh).toBe(true);
  });
});

describe("decisions of a shared desk", () => {
  it("are kept with their place, and can be asked for one by one", async () => {
    const store = await desk();
    value(await store.shared.take("DECISIONS", 1, [decided(1)]));
    const mine = decision("mine", { shared: { sequence: 1 } });
    expect(value(await store.shared.decision("mine"))).toEqual(mine);
    expect(value(await store.shared.decision("unknown"))).toBeNull();
  });

  it("made elsewhere ask for no reply here", async () => {
    const store = await withTwo();
    value(await store.shared.take("DECISIONS", 1, [decided(1)]));
    expect(await waiting(store)).toEqual([]);
  });

  it("without a reply ask for none", async () => {
    const store = await withTwo();
    const { reply: _, ...silent } = decision("mine");
    value(await store.decide([silent]));
    value(await store.shared.told("decision mine"));
    const told = { ...silent, shared: { sequence: 4 } };
    value(await store.shared.take("DECISIONS", 4, [{ kind: "decision", decision: told }]));
    expect(await waiting(store)).toEqual([]);
  });

  it("that take one back ask for none, nor does what they took back", async () => {
    const store = await withTwo();
    const undo = decision("undo", { kind: "undo", undoes: "mine" });
    value(await store.decide([decision("mine"), undo]));
    for (const key of await waiting(store)) value(await store.shared.told(key));
    const shared = { ...undo, shared: { sequence: 5 } };
    value(
      await store.shared.take("DECISIONS", 5, [decided(4), { kind: "decision", decision: shared }]),
    );
    expect(await waiting(store)).toEqual([]);
  });

  it("ask for the reply to be sent as it is named there", async () => {
    const store = await withTwo();
    value(await store.decide([decision("mine")]));
    expect(value(await store.shared.toShare())).toEqual([
      { key: "decision mine", kind: "decision", checkId: bare.id, id: "mine", at },
    ]);
    value(await store.shared.told("decision mine"));
    value(await store.shared.take("DECISIONS", 4, [decided(4)]));
    expect(value(await store.shared.toShare())).toEqual([
      { key: "reply mine", kind: "reply", checkId: bare.id, id: "mine", at },
    ]);
  });
});

describe("what is to be told", () => {
  const thing = (key: string, when: string): ToShare => ({
    key,
    kind: "erase",
    checkId: bare.id,
    id: key,
    at: `2026-05-0${when}T09:00:00.000Z`,
  });

  it("is told the oldest first", async () => {
    const store = await desk();
    for (const each of [thing("a", "3"), thing("b", "2"), thing("c", "4"), thing("d", "2")]) {
      value(await store.shared.share(each));
    }
    expect(await waiting(store)).toEqual(["b", "d", "a", "c"]);
  });

  it("is heard of when it comes, and goes once it was told, which the screens hear of", async () => {
    const store = await desk();
    const [soon, gone, told] = [vi.fn(), vi.fn(), vi.fn()];
    store.shared.onWaiting(soon);
    store.shared.onWaiting(gone)();
    store.onShared(told);
    value(await store.shared.share(thing("a", "2")));
    value(await store.shared.share(thing("b", "3")));
    expect(soon).toHaveBeenCalledTimes(2);
    expect(gone).not.toHaveBeenCalled();
    expect(told).not.toHaveBeenCalled();
    value(await store.shared.told("a"));
    expect(await waiting(store)).toEqual(["b"]);
    expect(told.mock.calls).toEqual([["shared"]]);
  });

  it("can't be read where the storage fails, which is told", async () => {
    const store = await desk();
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(() => {
      throw new DOMException("gone", "NotFoundError");
    });
    expect(await store.shared.toShare()).toMatchObject({ fault: { code: "storeFailed" } });
    expect(await store.shared.forgetBefore(at)).toMatchObject({ fault: { code: "storeFailed" } });
    expect(await store.shared.credential()).toBeNull();
  });
});

describe("a person's credential", () => {
  it("is kept until it is decided away, beside the places of the streams", async () => {
    const store = await desk();
    expect(value(await store.shared.keepCredential(null))).toBeNull();
    expect(await store.shared.credential()).toBeNull();
    value(await store.shared.take("INBOX", 3, []));
    value(await store.shared.keepCredential("a seed"));
    store.close();
    const again = await desk();
    expect(await again.shared.credential()).toBe("a seed");
    value(await again.shared.keepCredential(null));
    expect(await again.shared.credential()).toBeNull();
    const values = (await rowsOf("stopfit-desk", "shared")) as { readonly key: string }[];
    expect(values.map(({ key }) => key)).toEqual(["position INBOX"]);
    expect(value(await again.shared.position("INBOX"))).toBe(3);
  });
});

import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import type { DeskChange } from "../../src/storage/deskDatabase.ts";
import { type DeskStore, openDeskStore } from "../../src/storage/deskStore.ts";
import { computed, decision, desk, incoming, keyOf, recordAt } from "./support/desk.ts";
import { closedLater, freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

const [one, two] = [recordAt(0), recordAt(1)];

/** What a tab hears of the others, from now on. */
function heardBy(store: DeskStore): DeskChange[] {
  const heard: DeskChange[] = [];
  store.subscribe((change) => heard.push(change));
  return heard;
}

const heardInAll = (heard: readonly DeskChange[], changes: readonly DeskChange[]) =>
  vi.waitFor(() => expect(heard).toEqual(changes));

describe("tabs of one desk", () => {
  it("hear what another did, once and as what it was, and nothing of what was here already", async () => {
    const [here, other] = [await desk(), await desk()];
    const [heard, own] = [heardBy(other), heardBy(here)];
    value(await here.add([incoming(one)]));
    value(await here.add([incoming(one)]));
    value(await here.keepResults([{ key: keyOf(one), computed, assessment: null }]));
    value(await here.decide([decision("a")]));
    expect(value(await here.decide([decision("a")]))).toEqual([]);
    value(await here.takeOut({ submissions: [keyOf(one)], decisions: ["a"] }));
    await heardInAll(heard, ["submissions", "results", "decisions", "submissions", "decisions"]);
    expect(own).toEqual([]);
  });

  it("hear nothing of what could not be kept", async () => {
    const [here, other] = [await desk(), await desk()];
    const heard = heardBy(other);
    const waiting = vi.fn();
    here.shared.onWaiting(waiting);
    const full = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    const failed = [
      await here.add([incoming(one)]),
      await here.keepResults([]),
      await here.decide([decision("a")]),
      await here.takeOut({ submissions: ["a"], decisions: [] }),
    ];
    expect(failed.map((each) => (each.ok ? "kept" : each.fault.code))).toEqual(
      failed.map(() => "storeFull"),
    );
    full.mockRestore();
    value(await here.shared.told("a"));
    await heardInAll(heard, ["shared"]);
    expect(waiting).not.toHaveBeenCalled();
  });

  it("hear no more once they no longer listen, or are closed", async () => {
    const [here, other, closed] = [await desk(), await desk(), await desk()];
    const [heard, gone, afterClosing] = [heardBy(other), vi.fn(), heardBy(closed)];
    other.subscribe(gone)();
    closed.close();
    value(await here.add([incoming(one)]));
    await heardInAll(heard, ["submissions"]);
    expect(gone).not.toHaveBeenCalled();
    expect(afterClosing).toEqual([]);
  });

  it("of which one is closed tell the others nothing more, and a write under way still ends", async () => {
    const [here, other] = [await desk(), await desk()];
    const heard = heardBy(other);
    const writing = here.add([incoming(one)]);
    here.close();
    expect(value(await writing).added).toBe(1);
    here.close();
    value(await other.add([incoming(two)]));
    const third = await desk();
    value(await third.decide([decision("a")]));
    await heardInAll(heard, ["decisions"]);
    expect(value(await other.submissions())).toHaveLength(2);
  });

  it("hear what came from the shared desk, as does whoever asked for that in the same one", async () => {
    const [here, other] = [await desk(), await desk()];
    const heard = heardBy(other);
    const [own, gone]: [DeskChange[], DeskChange[]] = [[], []];
    here.onShared((change) => own.push(change));
    here.onShared((change) => gone.push(change))();
    const theirs = decision("theirs", { shared: { sequence: 1 } });
    value(await here.shared.take("DECISIONS", 1, [{ kind: "decision", decision: theirs }]));
    value(await here.decide([decision("mine")]));
    await heardInAll(heard, ["decisions", "decisions"]);
    expect(own).toEqual(["decisions"]);
    expect(gone).toEqual([]);
  });

  it("have something to tell the shared desk once something was decided, not before", async () => {
    const store = await desk();
    const waiting = vi.fn();
    const stop = store.shared.onWaiting(waiting);
    value(await store.add([incoming(one)]));
    expect(waiting).not.toHaveBeenCalled();
    value(await store.decide([decision("a")]));
    expect(waiting).toHaveBeenCalledTimes(1);
    value(await store.decide([decision("a")]));
    expect(waiting).toHaveBeenCalledTimes(1);
    stop();
    value(await store.decide([decision("b")]));
    expect(waiting).toHaveBeenCalledTimes(1);
  });
});

describe("a desk", () => {
  it("works alone where the browser lets tabs hear nothing of each other", async () => {
    vi.stubGlobal("BroadcastChannel", undefined);
    const store = await desk();
    value(await store.add([incoming(one)]));
    expect(value(await store.submissions())).toHaveLength(1);
    expect(() => store.close()).not.toThrow();
  });

  it("that the browser refuses is not opened, and says why", async () => {
    vi.stubGlobal("indexedDB", undefined);
    expect(await openDeskStore()).toMatchObject({ ok: false, fault: { code: "storeRefused" } });
  });

  it("under another name is another", async () => {
    const store = await desk();
    value(await store.add([incoming(one)]));
    const heard = heardBy(store);
    const other = closedLater(value(await openDeskStore("stopfit-desk-of-a-test")));
    expect(value(await other.submissions())).toEqual([]);
    value(await other.add([incoming(two)]));
    expect(value(await store.submissions()).map(({ checkId }) => checkId)).toEqual([one.id]);
    value(await (await desk()).decide([decision("a")]));
    await heardInAll(heard, ["decisions"]);
  });
});

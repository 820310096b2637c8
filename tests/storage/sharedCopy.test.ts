import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import type { DeskChange } from "../../src/storage/deskDatabase.ts";
import { tinyPhoto } from "../support/pictures.ts";
import { desk, incoming, keyOf } from "./support/desk.ts";
import {
  at,
  bare,
  decided,
  decision,
  listed,
  name,
  nameOf,
  others,
  photo,
  readings,
  waiting,
  withTwo,
} from "./support/shared.ts";
import { freshBrowsers, value } from "./support/tabs.ts";

freshBrowsers();

describe("a desk's copy of the shared one", () => {
  it("takes each place of a stream once, also where two tabs bring it", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 3, [readings(3)]));
    value(await store.shared.take("INBOX", 3, [readings(3)]));
    value(await store.shared.take("INBOX", 2, [readings(2)]));
    expect(await listed(store)).toHaveLength(1);
    expect(value(await store.shared.position("INBOX"))).toBe(3);
    expect(value(await store.shared.position("DECISIONS"))).toBe(0);
  });

  it("joins names and photos to their readings, whichever comes first; erased, they are gone", async () => {
    for (const order of [
      [name, photo, readings(1)] as const,
      [readings(1), photo, name] as const,
    ]) {
      vi.stubGlobal("indexedDB", new IDBFactory());
      const store = await desk();
      for (const [place, thing] of order.entries()) {
        value(await store.shared.take(`S${place}`, 1, [thing]));
      }
      const [row] = await listed(store);
      expect(row).toMatchObject({ who: "Kim", contact: "kim@hale.example", photosLeftOut: 0 });
      const record = JSON.parse(value(await store.text(keyOf(bare))) ?? "") as CheckRecord;
      expect(record).toMatchObject({
        author: { name: "Kim" },
        notes: "Loaded.",
        photos: [tinyPhoto],
      });

      value(await store.shared.take("DECISIONS", 1, [{ kind: "erased", checkId: bare.id }]));
      expect((await listed(store))[0]).toMatchObject({ who: "", contact: "", photosLeftOut: 1 });
      expect(JSON.parse(value(await store.text(keyOf(bare))) ?? "")).toEqual(bare);
      store.close();
    }
  });

  it("what is personal goes by age; readings stay", async () => {
    const store = await desk();
    value(await store.shared.take("PERSONAL", 2, [name, photo]));
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.shared.forgetBefore("2026-05-02T08:00:00.000Z"));
    expect((await listed(store))[0]?.who).toBe("Kim");
    value(await store.shared.forgetBefore("2026-05-03T00:00:00.000Z"));
    expect((await listed(store))[0]?.who).toBe("");
    expect(await listed(store)).toHaveLength(1);
  });

  it("a version belongs to the phone that sent it first: another can't take its replies over", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.shared.take("INBOX", 2, [readings(2, { sender: "U2", personal: null })]));
    expect(value(await store.shared.sentByOf(keyOf(bare)))).toMatchObject({
      sender: "U1",
      personal: "p1",
    });
  });

  it("a decision is told; its reply only once it stands in the stream", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.decide([decision("mine")]));
    expect(await waiting(store)).toEqual(["decision mine"]);
    value(await store.shared.told("decision mine"));
    const shared = { sequence: 4 };
    value(
      await store.shared.take("DECISIONS", 4, [
        { kind: "decision", decision: decision("mine", { shared }) },
      ]),
    );
    expect(await waiting(store)).toEqual(["reply mine"]);
  });

  it("one that comes second is not answered, and another's decision asks for nothing here", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.decide([decision("mine")]));
    value(await store.shared.told("decision mine"));
    const theirs = decision("theirs", { by: "otto", shared: { sequence: 4 } });
    value(await store.shared.take("DECISIONS", 4, [{ kind: "decision", decision: theirs }]));
    const mine = decision("mine", { shared: { sequence: 5 } });
    value(await store.shared.take("DECISIONS", 5, [{ kind: "decision", decision: mine }]));
    expect(await waiting(store)).toEqual([]);
  });

  it("what came by a file is decided here alone", async () => {
    const store = await desk();
    value(await store.add([{ ...readings(0).incoming, way: "file" }]));
    value(await store.decide([decision("mine")]));
    expect(await waiting(store)).toEqual([]);
  });

  it("a reply is fetched by its own phone only, and whichever stream comes first", async () => {
    const store = await desk();
    const reply = { id: "r1", checkId: bare.id, sender: "U1", from: "ines", at };
    const fetched = { kind: "fetched" as const, reply: "r1", at: "2026-05-02T11:00:00.000Z" };
    value(await store.shared.take("INBOX", 1, [{ ...fetched, sender: "U1" }]));
    value(await store.shared.take("REPLIES", 1, [{ kind: "reply", reply }]));
    expect(value(await store.shared.facts()).replies).toEqual([
      { ...reply, fetchedAt: fetched.at },
    ]);
    const other = { ...reply, id: "r2" };
    value(await store.shared.take("REPLIES", 2, [{ kind: "reply", reply: other }]));
    value(await store.shared.take("INBOX", 2, [{ ...fetched, reply: "r2", sender: "U9" }]));
    expect(value(await store.shared.facts()).replies[1]).toEqual(other);
  });
});

describe("what a stream brings", () => {
  it("is told once a kind, to this tab and the others, and never what was here already", async () => {
    const [store, tab] = [await desk(), await desk()];
    const [own, heard]: [DeskChange[], DeskChange[]] = [[], []];
    store.onShared((change) => own.push(change));
    tab.subscribe((change) => heard.push(change));
    const waiting = vi.fn();
    store.shared.onWaiting(waiting);
    value(await store.shared.take("INBOX", 3, [readings(1), others, name]));
    value(await store.shared.take("INBOX", 3, [readings(1), decided(1)]));
    expect(own).toEqual(["submissions"]);
    expect(waiting).not.toHaveBeenCalled();
    value(await store.shared.take("DECISIONS", 3, [decided(3)]));
    expect(waiting).toHaveBeenCalledTimes(1);
    const reply = { id: "r1", checkId: bare.id, sender: "U1", from: "ines", at };
    value(await store.shared.take("REPLIES", 3, [{ kind: "reply", reply }]));
    value(await store.shared.take("REPLIES", 4, []));
    expect(own).toEqual(["submissions", "decisions", "shared"]);
    await vi.waitFor(() => expect(heard).toEqual(own));
    expect(waiting).toHaveBeenCalledTimes(1);
    expect(value(await store.shared.position("REPLIES"))).toBe(4);
  });

  it("makes the list in one piece untrue where it is about submissions, else not", async () => {
    const store = await desk();
    value(await store.renewSnapshot());
    value(await store.shared.take("DECISIONS", 1, [decided(1)]));
    expect(value(await store.snapshot())?.fresh).toBe(true);
    for (const [place, thing] of [readings(1), name, photo].entries()) {
      value(await store.shared.take("INBOX", place + 1, [thing]));
      expect(value(await store.snapshot())?.fresh).toBe(false);
      value(await store.renewSnapshot());
    }
  });

  it("is all kept, its place too, or nothing of it, and then nobody is told", async () => {
    const store = await desk();
    const [told, waiting] = [vi.fn(), vi.fn()];
    store.onShared(told);
    store.shared.onWaiting(waiting);
    const put = IDBObjectStore.prototype.put;
    const full = vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(function (
      this: IDBObjectStore,
      ...given
    ) {
      if (this.name === "shared") throw new DOMException("full", "QuotaExceededError");
      return put.apply(this, given);
    });
    const refused = await store.shared.take("INBOX", 3, [readings(1), decided(1)]);
    full.mockRestore();
    expect(refused).toMatchObject({ ok: false, fault: { code: "storeFull" } });
    expect(await listed(store)).toEqual([]);
    expect(value(await store.decisions())).toEqual([]);
    expect(value(await store.shared.position("INBOX"))).toBe(0);
    expect(told).not.toHaveBeenCalled();
    expect(waiting).not.toHaveBeenCalled();
  });

  it("tells of each version who sent it and what of it comes apart, also where a file brought it first", async () => {
    const store = await desk();
    value(await store.add([incoming(bare)]));
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    expect(await listed(store)).toHaveLength(1);
    const sent = {
      key: keyOf(bare),
      checkId: bare.id,
      sender: "U1",
      personal: "p1",
      photos: ["f1"],
      sequence: 1,
    };
    expect(value(await store.shared.facts())).toEqual({ sentBy: [sent], replies: [] });
    // The same phone sends it once more, with a photo more.
    value(await store.shared.take("INBOX", 5, [readings(5, { photos: ["f1", "f2"] })]));
    expect(value(await store.shared.sentByOf(keyOf(bare)))).toEqual({
      ...sent,
      photos: ["f1", "f2"],
      sequence: 5,
    });
    expect((await listed(store))[0]?.photosLeftOut).toBe(2);
    expect(value(await store.shared.sentByOf("unknown"))).toBeNull();
  });

  it("shows names without the blanks around them, and how many photos are here and how many not", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 1, [readings(1, { photos: ["f1", "f2"] })]));
    expect((await listed(store))[0]).toMatchObject({ who: "", photos: 0, photosLeftOut: 2 });
    value(await store.shared.take("PERSONAL", 1, [nameOf("p1", bare.id, "Kim"), photo]));
    expect((await listed(store))[0]).toMatchObject({
      who: "Kim",
      contact: "Kim@hale.example",
      photos: 1,
      photosLeftOut: 1,
    });
  });

  it("for a version without names of its own leaves none in the list", async () => {
    const store = await desk();
    value(await store.shared.take("INBOX", 1, [readings(1, { personal: null })]));
    value(await store.shared.take("PERSONAL", 1, [name]));
    expect((await listed(store))[0]).toMatchObject({ who: "", contact: "" });
    const notes = { ...name, hash: "p2", texts: { "/notes": "Loaded." } };
    value(await store.shared.take("INBOX", 2, [readings(2, { personal: "p2" })]));
    value(await store.shared.take("PERSONAL", 2, [notes]));
    expect((await listed(store))[0]).toMatchObject({ who: "", contact: "" });
  });

  it("comes in, too, where a restore took the version out again", async () => {
    const store = await withTwo();
    value(await store.takeOut({ submissions: [keyOf(bare)], decisions: [] }));
    value(await store.shared.take("PERSONAL", 4, [nameOf("p1", bare.id, "Kit")]));
    expect((await listed(store)).map(({ who }) => who)).toEqual(["Lee"]);
  });

  it("has a reply fetched before the reply itself came", async () => {
    const store = await desk();
    const fetched = { kind: "fetched" as const, reply: "r1", sender: "U1", at };
    const told = vi.fn();
    store.onShared(told);
    value(await store.shared.take("INBOX", 1, [fetched]));
    expect(told.mock.calls).toEqual([["shared"]]);
    expect(value(await store.shared.facts()).replies).toEqual([
      { id: "r1", checkId: "", sender: "U1", from: "", at: "", fetchedAt: at },
    ]);
  });
});

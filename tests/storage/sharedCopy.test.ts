import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Outcome } from "../../src/physics/outcome.ts";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import type { Decision } from "../../src/records/review/decision.ts";
import { factsOf } from "../../src/records/review/submission.ts";
import { type DeskStore, openDeskStore } from "../../src/storage/deskStore.ts";
import type { FromStream } from "../../src/storage/sharedCopy.ts";
import { generateRecords } from "../support/generateRecords.ts";
import { tinyPhoto } from "../support/pictures.ts";

beforeEach(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});

function value<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome.value;
}
const open = async (): Promise<DeskStore> => value(await openDeskStore());

const [full] = generateRecords(1);
if (!full) throw new Error("no record");
const { notes: _n, photos: _p, ...rest } = full;
const bare: CheckRecord = { ...rest, author: { role: "customer" } };
const keyOf = (record: CheckRecord) => `${record.id} ${factsOf(record).digest}`;
const at = "2026-05-02T09:00:00.000Z";

function readings(
  sequence: number,
  change: Partial<Extract<FromStream, { kind: "readings" }>> = {},
) {
  return {
    kind: "readings" as const,
    incoming: {
      facts: factsOf(bare),
      text: JSON.stringify(bare),
      way: "desk" as const,
      photosLeftOut: 0,
    },
    sender: "U1",
    personal: "p1",
    photos: ["f1"],
    sequence,
    at,
    ...change,
  };
}
const name: FromStream = {
  kind: "personal",
  hash: "p1",
  checkId: bare.id,
  at,
  texts: { "/author/name": "Kim", "/author/contact": "kim@hale.example", "/notes": "Loaded." },
};
const photo: FromStream = { kind: "personal", hash: "f1", checkId: bare.id, at, photo: tinyPhoto };

function decision(key: string, change: Partial<Decision> = {}): Decision {
  return {
    key,
    checkId: bare.id,
    submission: keyOf(bare),
    kind: "accept",
    by: "ines",
    at,
    note: "",
    reply: "Hello,",
    ...change,
  };
}

async function listed(store: DeskStore) {
  return value(await store.submissions());
}
async function waiting(store: DeskStore) {
  return value(await store.shared.toShare()).map(({ key }) => key);
}

describe("a desk's copy of the shared one", () => {
  it("takes each place of a stream once, also where two tabs bring it", async () => {
    const store = await open();
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
      const store = await open();
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
    const store = await open();
    value(await store.shared.take("PERSONAL", 2, [name, photo]));
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.shared.forgetBefore("2026-05-02T08:00:00.000Z"));
    expect((await listed(store))[0]?.who).toBe("Kim");
    value(await store.shared.forgetBefore("2026-05-03T00:00:00.000Z"));
    expect((await listed(store))[0]?.who).toBe("");
    expect(await listed(store)).toHaveLength(1);
  });

  it("a version belongs to the phone that sent it first: another can't take its replies over", async () => {
    const store = await open();
    value(await store.shared.take("INBOX", 1, [readings(1)]));
    value(await store.shared.take("INBOX", 2, [readings(2, { sender: "U2", personal: null })]));
    expect(value(await store.shared.sentByOf(keyOf(bare)))).toMatchObject({
      sender: "U1",
      personal: "p1",
    });
  });

  it("a decision is told; its reply only once it stands in the stream", async () => {
    const store = await open();
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
    const store = await open();
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
    const store = await open();
    value(await store.add([{ ...readings(0).incoming, way: "file" }]));
    value(await store.decide([decision("mine")]));
    expect(await waiting(store)).toEqual([]);
  });

  it("a reply is fetched by its own phone only, and whichever stream comes first", async () => {
    const store = await open();
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

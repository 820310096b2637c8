import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import type { DeskStore } from "../../../src/storage/deskStore.ts";
import type { FromStream } from "../../../src/storage/sharedCopy.ts";
import { tinyPhoto } from "../../support/pictures.ts";
import { decision as anyDecision, desk, incoming, keyOf, recordAt } from "./desk.ts";
import { value } from "./tabs.ts";

const { notes: _n, photos: _p, ...rest } = recordAt(0);
export const bare: CheckRecord = { ...rest, author: { role: "customer" } };
export const at = "2026-05-02T09:00:00.000Z";

export function readings(
  sequence: number,
  change: Partial<Extract<FromStream, { kind: "readings" }>> = {},
) {
  return {
    kind: "readings" as const,
    incoming: { ...incoming(bare), way: "desk" as const },
    sender: "U1",
    personal: "p1",
    photos: ["f1"],
    sequence,
    at,
    ...change,
  };
}

export const name: FromStream = {
  kind: "personal",
  hash: "p1",
  checkId: bare.id,
  at,
  texts: { "/author/name": "Kim", "/author/contact": "kim@hale.example", "/notes": "Loaded." },
};
export const photo: FromStream = {
  kind: "personal",
  hash: "f1",
  checkId: bare.id,
  at,
  photo: tinyPhoto,
};

export function decision(key: string, change: Partial<Decision> = {}): Decision {
  const made = { checkId: bare.id, submission: keyOf(bare), by: "ines", at, reply: "Hello," };
  return anyDecision(key, { ...made, ...change });
}

export async function listed(store: DeskStore) {
  return value(await store.submissions());
}

/** Keys of what is to be told. */
export async function waiting(store: DeskStore) {
  return value(await store.shared.toShare()).map(({ key }) => key);
}

/** This desk's own decision, as the stream brings it at a place. */
export const decided = (sequence: number, change: Partial<Decision> = {}): FromStream => ({
  kind: "decision",
  decision: decision("mine", { shared: { sequence }, ...change }),
});

/** A name and a contact with blanks around them. */
export const nameOf = (hash: string, checkId: string, text: string, when = at): FromStream => ({
  kind: "personal",
  hash,
  checkId,
  at: when,
  texts: { "/author/name": ` ${text} `, "/author/contact": ` ${text}@hale.example ` },
});

export const other = { ...bare, id: "another check" };
export const others = readings(2, {
  incoming: { ...incoming(other), way: "desk" as const },
  personal: "p2",
  photos: [],
});

/** Both checks, the name and the photo of one and the name of the other. */
export async function withTwo(): Promise<DeskStore> {
  const store = await desk();
  value(await store.shared.take("INBOX", 2, [readings(1), others]));
  const theirs = nameOf("p2", other.id, "Lee", "2026-05-04T09:00:00.000Z");
  value(await store.shared.take("PERSONAL", 3, [name, photo, theirs]));
  return store;
}

export const whoIn = async (store: DeskStore, record: CheckRecord) =>
  value(await store.submission(keyOf(record)))?.who;

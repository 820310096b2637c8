import { describe, expect, it } from "vitest";
import type { PersonalPart, SentBy } from "../../src/storage/deskDatabase.ts";
import { wholeText } from "../../src/storage/sharedParts.ts";
import { demoRecord } from "../support/demoRecords.ts";
import { tinyPhoto } from "../support/pictures.ts";

const { photos: _photos, notes: _notes, ...bare } = demoRecord("arm-fits");
const text = JSON.stringify({ ...bare, author: { role: "customer" } });

/** What a desk has of a check that came in pieces. */
function parts(sent: Partial<SentBy> | null, personal: readonly PersonalPart[] = []) {
  const whole: SentBy = {
    key: "k1",
    checkId: bare.id,
    sender: "U1",
    personal: "p1",
    photos: ["f1", "f2"],
    sequence: 1,
    ...sent,
  };
  return {
    sentBy: { get: async (key: string) => (sent !== null && key === "k1" ? whole : undefined) },
    personal: { get: async (hash: string) => personal.find((part) => part.hash === hash) },
  };
}
const at = "2026-05-02T09:00:00.000Z";
const names = { hash: "p1", checkId: bare.id, at, texts: { "/author/name": "Kim" } };
const photo = (hash: string, caption: string) => ({
  hash,
  checkId: bare.id,
  at,
  photo: { ...tinyPhoto, caption },
});

describe("a check that was sent in pieces", () => {
  it("has its name and its photos, in their order, as far as they are here", async () => {
    const all = [photo("f2", "two"), photo("f1", "one"), names];
    const whole = JSON.parse(await wholeText(parts({}, all), "k1", text));
    expect(whole.author.name).toBe("Kim");
    expect(whole.photos.map((each: { caption: string }) => each.caption)).toEqual(["one", "two"]);
    const some = JSON.parse(await wholeText(parts({}, [photo("f2", "two")]), "k1", text));
    expect(some.photos).toHaveLength(1);
    expect(some.author).toEqual({ role: "customer" });
    const named = JSON.parse(await wholeText(parts({}, [names]), "k1", text));
    expect(named.author.name).toBe("Kim");
    expect("photos" in named).toBe(false);
  });

  it("is the very text where none of that is here, was sent, or it came otherwise", async () => {
    const spaced = ` ${text} `;
    expect(await wholeText(parts(null, [names]), "k1", spaced)).toBe(spaced);
    expect(await wholeText(parts({}, []), "k1", spaced)).toBe(spaced);
    const nameless = parts({ personal: null, photos: [] }, [names]);
    expect(await wholeText(nameless, "k1", spaced)).toBe(spaced);
    const erased: PersonalPart = { hash: "p1", checkId: bare.id, at };
    expect(await wholeText(parts({}, [erased]), "k1", spaced)).toBe(spaced);
  });
});

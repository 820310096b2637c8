import { describe, expect, it } from "vitest";
import { rowText } from "../../src/storage/damagedRow.ts";

/** Pictures by their key: the id of the check and their own name. */
const pictures = (kept: { readonly [key: string]: string }) => ({
  get: async (key: string) => {
    const data = kept[key];
    return data === undefined ? undefined : { key, data };
  },
});
const textOf = async (row: unknown, kept = {}): Promise<unknown> =>
  JSON.parse(await rowText(row, pictures(kept) as never));

describe("a row as a text to be saved", () => {
  it("has its pictures, as far as they are there", async () => {
    const inRow = (picture: string) => ({ type: "image/png", picture, length: 4 });
    const own = { type: "image/png", data: "OWN=" };
    const row = { id: "a", record: { photos: [inRow("p1"), inRow("p2"), own, null] } };
    expect(await textOf(row, { "a p1": "AAAA", "b p2": "BBBB" })).toEqual({
      id: "a",
      record: { photos: [{ ...inRow("p1"), data: "AAAA" }, inRow("p2"), own, null] },
    });
  });

  it("is the row as it is where it has none, whatever it is", async () => {
    for (const row of [{ id: 1, record: { photos: [] } }, { record: { photos: 5 } }, [], null, 5]) {
      expect(await textOf(row)).toEqual(row);
    }
  });

  it("has in both places what stands in two, and ends where something holds itself", async () => {
    const shared = { values: [1, 2] };
    expect(await textOf({ left: shared, right: shared, list: [shared, shared] })).toEqual({
      left: shared,
      right: shared,
      list: [shared, shared],
    });
    const circle: { name: string; inner: object } = { name: "a", inner: {} };
    circle.inner = { again: circle, beside: 5 };
    expect(await textOf(circle)).toEqual({ name: "a", inner: { beside: 5 } });
  });

  it("has numbers that JSON has none of as text", async () => {
    expect(await textOf({ big: 12n })).toEqual({ big: "12" });
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../src/records/filling/storedFromRecord.ts";
import { contentOf, isSame, replacesSomething } from "../../src/storage/sameContent.ts";
import { demoRecord } from "../support/demoRecords.ts";

describe("plain data", () => {
  it("is the same as a copy of it, whatever the order of its fields", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(isSame(value, structuredClone(value))).toBe(true);
        expect(isSame({ a: value, b: 1 }, { b: 1, a: structuredClone(value) })).toBe(true);
      }),
    );
  });

  it.each([
    [1, 2],
    [1, "1"],
    [0, null],
    [null, {}],
    [{}, null],
    [null, undefined],
    ["a", ["a"]],
    [["a"], "a"],
    [[], {}],
    [["a"], { 0: "a" }],
    [
      [1, 2],
      [2, 1],
    ],
    [[1], [1, 2]],
    [[1, 2], [1]],
    [{ a: 1 }, { a: 1, b: 1 }],
    [{ a: 1, b: 1 }, { a: 1 }],
    [
      { a: 1, b: 1 },
      { a: 1, b: 2 },
    ],
    [
      { a: 1, b: [1, 2, 3] },
      { a: 1, b: [1, 2, 4] },
    ],
    [{ a: undefined }, { b: undefined }],
    [{ a: { b: 1 } }, { a: { b: 2 } }],
    [{ toString: undefined }, { a: 1 }],
  ])("%j is not the same as %j", (first, second) => {
    expect(isSame(first, second)).toBe(false);
    expect(isSame(second, first)).toBe(false);
  });

  it("has numbers that are no numbers the same as each other", () => {
    expect(isSame([Number.NaN], [Number.NaN])).toBe(true);
  });
});

const complete: StoredCheck = storedFromRecord(demoRecord("arm-fits"));
const [left, right] = complete.record.corners ?? [];
if (left === undefined || right === undefined) throw new Error("two corners are needed");
const withRecord = (change: object): StoredCheck => ({
  ...complete,
  record: { ...complete.record, ...change },
});
const begun = newStoredCheck("Bay 2");
const typed = (...texts: string[]): StoredCheck => ({
  ...begun,
  entries: { "left.gap": { texts, unit: "mm", tol: "1" } },
});

describe("the content of a check", () => {
  it("is what a person put into it, not when it was written", () => {
    const later = { ...complete, revision: 9, updatedAt: "2030-01-01T00:00:00.000Z" };
    expect(contentOf(later)).toEqual(contentOf(complete));
    expect(contentOf({ ...complete, name: "Other" })).not.toEqual(contentOf(complete));
  });
});

describe("a check in the place of another", () => {
  it("replaces nothing that it has as well, in whatever order its sides stand", () => {
    expect(replacesSomething(complete, complete)).toBe(false);
    expect(replacesSomething(complete, withRecord({ corners: [right, left] }))).toBe(false);
    expect(replacesSomething(complete, withRecord({ notes: "more than before" }))).toBe(
      complete.record.notes !== undefined,
    );
    const noted = withRecord({ notes: "as it was" });
    expect(replacesSomething(noted, { ...noted, name: complete.name })).toBe(false);
    expect(replacesSomething(withRecord({ job: undefined }), complete)).toBe(false);
  });

  it("replaces a reading, a side, a note or a name that it has otherwise, or not at all", () => {
    const noted = withRecord({ notes: "as it was" });
    expect(replacesSomething(noted, withRecord({ notes: "otherwise" }))).toBe(true);
    const { notes: _, ...without } = noted.record;
    expect(replacesSomething(noted, { ...noted, record: without })).toBe(true);
    expect(replacesSomething(complete, withRecord({ corners: [left] }))).toBe(true);
    expect(replacesSomething(complete, withRecord({ corners: undefined }))).toBe(true);
    expect(replacesSomething(complete, withRecord({ corners: "none" }))).toBe(true);
    const lower = { ...right, gap: { values: [1], tol: 1 } };
    expect(replacesSomething(complete, withRecord({ corners: [left, lower] }))).toBe(true);
    const twice = { ...right, side: "left" };
    expect(replacesSomething(complete, withRecord({ corners: [left, twice] }))).toBe(true);
    expect(replacesSomething(complete, withRecord({ vehicle: "Marlow" }))).toBe(true);
  });

  it("replaces nothing where no side was measured yet", () => {
    expect(replacesSomething(withRecord({ corners: [] }), complete)).toBe(false);
    expect(replacesSomething(withRecord({ corners: [] }), withRecord({ corners: [] }))).toBe(false);
    expect(replacesSomething(withRecord({ corners: [] }), withRecord({ corners: "none" }))).toBe(
      true,
    );
    // Every other list that was emptied was emptied by someone.
    expect(replacesSomething(withRecord({ events: [] }), withRecord({ events: [1] }))).toBe(true);
  });

  it("replaces what was typed, but not a field that was left empty", () => {
    expect(replacesSomething(typed("21"), typed("21"))).toBe(false);
    expect(replacesSomething(typed("21"), typed("22"))).toBe(true);
    expect(replacesSomething(typed("21"), begun)).toBe(true);
    expect(replacesSomething(typed(" ", ""), typed("22"))).toBe(false);
    expect(replacesSomething(typed("", "21"), typed("22"))).toBe(true);
  });

  it("replaces a name, but not an empty one", () => {
    const named = (name: string) => ({ ...complete, name });
    expect(replacesSomething(named("Marlow"), named("Tern"))).toBe(true);
    expect(replacesSomething(named("Marlow"), named(""))).toBe(true);
    expect(replacesSomething(named(""), named("Tern"))).toBe(false);
  });

  it("replaces lists that are no sides where anything in them differs", () => {
    const list = (limits: unknown) => withRecord({ limits });
    expect(replacesSomething(list([1, 2]), list([1, 2]))).toBe(false);
    expect(replacesSomething(list([1, 2]), list([1, 2, 3]))).toBe(true);
    expect(replacesSomething(list([{ kind: "tyre" }]), list([{ kind: "damper" }]))).toBe(true);
    // A list of groups without a side has an order.
    const [tyre, damper] = [{ kind: "tyre" }, { kind: "damper" }];
    expect(replacesSomething(list([tyre, damper]), list([damper, tyre]))).toBe(true);
  });
});

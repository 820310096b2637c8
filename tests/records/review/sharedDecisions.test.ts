import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eventText, readDeskEvent } from "../../../src/records/exchanged/deskMessages.ts";
import {
  type Decision,
  sharedDecisions,
  standingDecision,
} from "../../../src/records/review/decision.ts";

function decision(key: string, by: string, change: Partial<Decision> = {}): Decision {
  return {
    key,
    checkId: "c1",
    submission: "v1",
    kind: "accept",
    by,
    at: "2026-05-02T10:00:00.000Z",
    note: "",
    ...change,
  };
}
const at = (sequence: number) => ({ shared: { sequence } });

describe("decisions of a shared desk", () => {
  it("the first in the stream stands, whatever the clocks say; the second is told", () => {
    const first = decision("a", "ines", { ...at(5), at: "2026-05-02T12:00:00.000Z" });
    const second = decision("b", "otto", { ...at(6), at: "2026-05-02T09:00:00.000Z" });
    expect(sharedDecisions([second, first], "v1")).toEqual({ standing: first, twice: [second] });
    expect(standingDecision([second, first], "v1")).toBe(first);
  });

  it("one that is not in the stream yet comes after those that are", () => {
    const mine = decision("a", "ines", { at: "2026-05-01T00:00:00.000Z" });
    const theirs = decision("b", "otto", at(3));
    expect(sharedDecisions([mine, theirs], "v1")).toEqual({ standing: theirs, twice: [mine] });
  });

  it("taken back, the next one made after that stands; one told twice can be taken back", () => {
    const first = decision("a", "ines", at(1));
    const second = decision("b", "otto", at(2));
    const undoFirst = decision("u", "ines", { ...at(3), kind: "undo", undoes: "a" });
    const third = decision("d", "otto", at(4));
    const undoSecond = decision("w", "otto", { ...at(5), kind: "undo", undoes: "b" });
    const upTo = (...all: Decision[]) => sharedDecisions(all, "v1");
    expect(upTo(first, second, undoFirst).standing).toBeNull();
    expect(upTo(first, second, undoFirst, third)).toEqual({ standing: third, twice: [second] });
    expect(upTo(first, second, undoFirst, third, undoSecond).twice).toEqual([]);
  });

  it("of another version it says nothing", () => {
    const other = decision("a", "ines", { ...at(1), submission: "v2" });
    expect(sharedDecisions([other], "v1")).toEqual({ standing: null, twice: [] });
  });

  it("every desk comes to the same, in whatever order it keeps them, and never to two", () => {
    const kinds = fc.constantFrom("accept" as const, "askAgain" as const, "undo" as const);
    const made = fc.array(fc.tuple(kinds, fc.nat(9)), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(made, fc.infiniteStream(fc.nat()), (steps, random) => {
        const all = steps.map(([kind, names], place) =>
          decision(`k${place}`, "ines", {
            ...at(place + 1),
            kind,
            ...(kind === "undo" && { undoes: `k${names}` }),
          }),
        );
        const turned = all
          .map((each) => ({ each, by: random.next().value as number }))
          .sort((a, b) => a.by - b.by)
          .map(({ each }) => each);
        const found = sharedDecisions(turned, "v1");
        expect(found).toEqual(sharedDecisions(all, "v1"));
        expect(found.twice).not.toContain(found.standing);
        expect(standingDecision(turned, "v1")).toEqual(found.standing);
      }),
    );
  });
});

describe("an event out of the stream", () => {
  const told = { person: "ines", checkId: "c1", key: "k1", sequence: 7 };

  it("is by whom its subject names, whatever it says itself", () => {
    const body = eventText({
      kind: "decision",
      decision: decision("other", "otto", { checkId: "c9", reply: "Dear" }),
    });
    const read = readDeskEvent(body, told);
    expect(read).toMatchObject({
      ok: true,
      value: { decision: { by: "ines", checkId: "c1", key: "k1", shared: { sequence: 7 } } },
    });
    const erased = readDeskEvent(
      eventText({ kind: "erased", checkId: "c9", at: "2026-05-02T10:00:00.000Z" }),
      told,
    );
    expect(erased).toMatchObject({ ok: true, value: { kind: "erased", checkId: "c1" } });
  });

  it("longer than its fields could ever be is not read at all", () => {
    const body = eventText({ kind: "decision", decision: decision("k1", "ines") });
    expect(readDeskEvent(body.padEnd(500_000), told).ok).toBe(true);
    expect(readDeskEvent(body.padEnd(500_001), told).ok).toBe(false);
  });

  it("anything else is refused, and nothing throws", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (body) => {
        expect(readDeskEvent(body, told).ok).toBe(false);
      }),
    );
  });
});

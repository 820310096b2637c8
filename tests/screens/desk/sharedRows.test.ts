import { expect, it } from "vitest";
import type { Hand } from "../../../src/engine/handsSeen.ts";
import { takerOf } from "../../../src/engine/handsSeen.ts";
import type { DeskCheck } from "../../../src/records/review/decision.ts";
import { isNotFetched } from "../../../src/screens/desk/shared/notFetched.ts";
import { toldOf } from "../../../src/screens/desk/shared/rowWords.ts";

const now = Date.parse("2026-05-05T12:00:00.000Z");
const reply = { id: "r1", checkId: "c1", sender: "U1", from: "ines" };

it("a reply counts as not fetched after two days, not before, and not once it was fetched", () => {
  const at = (hours: number) => new Date(now - hours * 3_600_000).toISOString();
  expect(isNotFetched({ ...reply, at: at(49) }, now)).toBe(true);
  expect(isNotFetched({ ...reply, at: at(47) }, now)).toBe(false);
  expect(isNotFetched({ ...reply, at: at(490), fetchedAt: at(1) }, now)).toBe(false);
  expect(isNotFetched({ ...reply, at: "" }, now)).toBe(false);
});

it("of several who took a check, the one who did so first has it", () => {
  const hand = (person: string, revision: number, does: Hand["does"] = "took"): Hand => ({
    person,
    does,
    revision,
    at: 0,
  });
  expect(takerOf([hand("otto", 7), hand("ines", 5), hand("kim", 1, "looks")])?.person).toBe("ines");
  expect(takerOf([hand("kim", 1, "looks")])).toBeNull();
  expect(takerOf(undefined)).toBeNull();
});

it("a row tells who has the check, who looks at it, or that nobody fetched its reply", () => {
  const check = { latest: { checkId: "c1" }, decidedBy: "r1" } as DeskCheck;
  const state = { state: "on" as const, person: "ines", fault: null };
  const old = { ...reply, at: "2020-01-01T00:00:00.000Z" };
  const shared = (hands: Hand[]) => ({
    state,
    hands: new Map([["c1", hands]]),
    replies: new Map([["r1", old]]),
  });
  const took = { person: "otto", does: "took" as const, revision: 1, at: 0 };
  expect(toldOf(shared([took]), check)).toBe("taken by otto");
  expect(toldOf(shared([{ ...took, person: "ines" }]), check)).toBe("taken by you");
  expect(toldOf(shared([{ ...took, does: "looks" }]), check)).toBe("otto looks at it");
  expect(toldOf(shared([]), check)).toBe("reply not fetched");
});

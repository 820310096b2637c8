import { act, renderHook } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import { useDecisionDraft } from "../../../src/screens/desk/decisionDraft.ts";

const empty = { kind: null, note: "", typed: {}, picked: null, asked: [] };

afterEach(() => sessionStorage.clear());

function begunFrom(text: string) {
  sessionStorage.setItem("stopfit.desk.draft check 1", text);
  return renderHook(() => useDecisionDraft("check 1")).result.current[0];
}

describe("a decision that was begun", () => {
  it("is there again after a reload", () => {
    const first = renderHook(() => useDecisionDraft("check 1"));
    const begun = {
      kind: "askAgain",
      note: "Blurred.",
      typed: { accept: "Fine." },
      picked: "tall-firm",
      asked: ["left.gap"],
    } as const;
    act(() => first.result.current[1](begun));
    expect(renderHook(() => useDecisionDraft("check 1")).result.current[0]).toEqual(begun);
    expect(renderHook(() => useDecisionDraft("check 2")).result.current[0]).toEqual(empty);
  });

  it.each(["null", "[]", '["askAgain"]', "7", '"note"', "{", ""])(
    "is a new one where %s was kept",
    (text) => {
      expect(begunFrom(text)).toEqual(empty);
    },
  );

  it("keeps of a broken one what is sound", () => {
    expect(
      begunFrom(
        JSON.stringify({
          kind: "undo",
          note: 7,
          typed: { accept: "Fine.", askAgain: null, other: "x" },
          picked: ["tall-firm"],
          asked: ["left.gap", "left.nothing", 3, null],
          more: true,
        }),
      ),
    ).toEqual({ ...empty, typed: { accept: "Fine." }, asked: ["left.gap"] });
    expect(begunFrom(JSON.stringify({ typed: ["Fine."], asked: "left.gap", note: null }))).toEqual(
      empty,
    );
  });
});

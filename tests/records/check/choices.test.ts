import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DesignEvent, Side } from "../../../src/physics/fitment.ts";
import { isReadingId } from "../../../src/physics/readings/index.ts";
import {
  type ChoiceId,
  type ChoiceValue,
  choicesOf,
  choiceValues,
  isChoiceId,
} from "../../../src/records/check/choices.ts";
import {
  choicesApart,
  entriesWithChoices,
} from "../../../src/records/check/choicesAmongEntries.ts";
import { newStoredCheck } from "../../../src/records/check/storedCheck.ts";
import { chosen, movedTo, withChoice } from "../../../src/records/filling/choice.ts";
import {
  dampingShares,
  payloadShares,
  tyreRates,
} from "../../../src/records/filling/usualValues.ts";
import { allChosen, everyChoice } from "../../support/everyChoice.ts";

const typed = { "left.gap": { texts: ["21"], unit: "mm", tol: "" } } as const;

describe.each(everyChoice)("%s", (id, values) => {
  it("takes what can be chosen there, and nothing else", () => {
    expect(isChoiceId(id)).toBe(true);
    expect(isReadingId(id)).toBe(false);
    for (const value of values) expect(choicesOf({ [id]: value })).toEqual({ [id]: value });
    for (const value of [null, 5, ["gap"], { texts: ["gap"] }, true, undefined]) {
      expect(choicesOf({ [id]: value })).toEqual({});
    }
    if (!id.endsWith("stop.packId")) expect(choicesOf({ [id]: "banana" })).toEqual({});
  });

  it("stands among the entries and apart from them, and is the same", () => {
    for (const value of values) {
      const choices = choicesOf({ [id]: value });
      const together = entriesWithChoices({ entries: typed, choices });
      expect(together).toEqual({ ...typed, [id]: { texts: [value], unit: "", tol: "" } });
      expect(choicesApart(together)).toEqual({ entries: typed, choices });
    }
  });
});

describe("choices", () => {
  it("are chosen, changed and taken back one by one", () => {
    const empty = newStoredCheck();
    expect(chosen(empty, "left.stand")).toBeNull();
    const pressed = withChoice(empty, "left.stand", "pressed");
    const both = withChoice(pressed, "left.limits.3.place", "joint");
    expect(chosen(both, "left.stand")).toBe("pressed");
    expect(withChoice(both, "left.stand", "gap").choices).toEqual({
      "left.stand": "gap",
      "left.limits.3.place": "joint",
    });
    expect(withChoice(both, "left.stand", null).choices).toEqual({
      "left.limits.3.place": "joint",
    });
    expect(both.entries).toEqual({});
  });

  it("are typed by what can be chosen there", () => {
    const stand: ChoiceValue<`${Side}.stand`> = "missing";
    const place: ChoiceValue<`aside.right.limits.${number}.place`> = "mount";
    const leftOut: { [Kind in DesignEvent["kind"]]: `rules.${Kind}.leftOut` & ChoiceId } = {
      obstacle: "rules.obstacle.leftOut",
      hump: "rules.hump.leftOut",
      landing: "rules.landing.leftOut",
    };
    // @ts-expect-error no such stand
    const none: ChoiceValue<"left.stand"> = "yes";
    // @ts-expect-error no such choice
    const nowhere: ChoiceId = "left.stands";
    expect(choicesOf({ "left.stand": stand, "aside.right.limits.7.place": place })).toEqual({
      "left.stand": "missing",
      "aside.right.limits.7.place": "mount",
    });
    for (const id of Object.values(leftOut)) expect(choicesOf({ [id]: "yes" })).not.toEqual({});
    expect(choicesOf({ "left.stand": none, [nowhere]: "gap" })).toEqual({});
  });

  it("of shares and sorts are those that have a value", () => {
    const ids = (values: readonly { readonly id: string }[]) => values.map(({ id }) => id);
    expect(ids(payloadShares)).toEqual(choiceValues["payload.share"]);
    expect(ids(tyreRates)).toEqual(choiceValues["tyre.sort"]);
    expect(ids(dampingShares)).toEqual(choiceValues["damping.share"]);
  });

  it("are no words of a pattern, and nothing that every object has", () => {
    const none = [
      "side.stand",
      "aside.side.stand",
      "left.limits.#.place",
      "left.limits.-1.place",
      "left.limits..place",
      "aside.walk",
      "left.walk",
      "aside.aside.left.stand",
      "second.left.stand",
      "constructor",
      "__proto__",
      "toString",
      "",
    ];
    for (const id of none) expect(isChoiceId(id), id).toBe(false);
    const all = Object.fromEntries(none.map((id) => [id, "gap"]));
    expect(choicesOf(all)).toEqual({});
  });

  it("move with what was typed, and go where their place is none", () => {
    const check = { entries: typed, choices: choicesOf({ "left.stand": "gap", walk: "short" }) };
    const aside = movedTo(check, (id) => (id.startsWith("left.") ? `aside.${id}` : null));
    expect(aside).toEqual({
      entries: { "aside.left.gap": typed["left.gap"] },
      choices: { "aside.left.stand": "gap" },
    });
  });

  it("that stand apart already go before those among the entries", () => {
    const old = { ...typed, walk: { texts: ["short"], unit: "", tol: "" } } as const;
    const both = { ...old, linkage: { texts: ["no", "yes"], unit: "", tol: "" } } as const;
    expect(choicesApart(both, { linkage: "yes" })).toEqual({
      entries: typed,
      choices: { walk: "short", linkage: "yes" },
    });
    // What was never one of those offered is gone, as it was never said.
    const bent = { ...typed, linkage: { texts: [], unit: "", tol: "" } } as const;
    expect(choicesApart(bent, "x")).toEqual({ entries: typed, choices: {} });
  });

  it("of whatever is stored are read without a fault: sound ones stay, others go", () => {
    const sound = fc
      .constantFrom(...everyChoice)
      .chain(([id, values]) => fc.tuple(fc.constant(id), fc.constantFrom(...values)));
    const junk = fc.tuple(
      fc.oneof(fc.constantFrom(...everyChoice.map(([id]) => id)), fc.string()),
      fc.oneof(fc.jsonValue(), fc.string({ minLength: 8 })),
    );
    fc.assert(
      fc.property(fc.array(sound), fc.array(junk), (kept, others) => {
        const good = new Map(kept);
        const bad = others.filter(([id]) => !good.has(id) && !id.endsWith("stop.packId"));
        const values = new Map(everyChoice);
        const isSound = (id: string, value: unknown) =>
          typeof value === "string" && values.get(id)?.includes(value) === true;
        const unsound = bad.filter(([id, value]) => !isSound(id, value));
        const read = choicesOf(Object.fromEntries([...unsound, ...good]));
        expect(read).toEqual(Object.fromEntries(good));
        expect(choicesOf(read)).toEqual(read);
      }),
    );
    fc.assert(fc.property(fc.anything(), (value) => typeof choicesOf(value) === "object"));
  });

  it("are all different where all are chosen otherwise", () => {
    expect(Object.keys(allChosen())).toHaveLength(everyChoice.length);
    expect(new Set(everyChoice.map(([id]) => id)).size).toBe(everyChoice.length);
  });
});

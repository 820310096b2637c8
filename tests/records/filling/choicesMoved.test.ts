import { describe, expect, it } from "vitest";
import { changeRecord, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import {
  addLimit,
  chooseStop,
  removeCorner,
  removeLimit,
  setEntry,
} from "../../../src/records/filling/changes.ts";
import { chosen } from "../../../src/records/filling/choice.ts";
import { checkAgain, withFitted } from "../../../src/records/filling/fitted.ts";
import { otherAxle } from "../../../src/records/filling/job.ts";
import { withEventEntries, withUsualRules } from "../../../src/records/filling/rules.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { withPackStop, withStopSource } from "../../../src/records/filling/stopSources.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { allChosen } from "../../support/everyChoice.ts";

const full: StoredCheck = {
  ...storedFromRecord(demoRecord("arm-fits")),
  choices: allChosen(),
};
const ids = ({ choices }: StoredCheck): string[] => Object.keys(choices).sort();
const all = ids(full);
const without = (gone: RegExp): string[] => all.filter((id) => !gone.test(id));
const only = (kept: RegExp): string[] => all.filter((id) => kept.test(id));

describe("choices go with what they are of:", () => {
  it("those of a side, as it is put aside and back", () => {
    const { choices: _, ...bare } = full;
    const choices = { "right.stand": "pressed", "right.limits.0.place": "mount", walk: "short" };
    const check = { ...bare, choices } as StoredCheck;
    const left = withSides(check, "left");
    expect(left.choices).toEqual({
      "aside.right.stand": "pressed",
      "aside.right.limits.0.place": "mount",
      walk: "short",
    });
    expect(withSides(left, "both").choices).toEqual(choices);
  });

  it("those of a side that is taken out", () => {
    expect(ids(removeCorner(full, "right"))).toEqual(without(/^right\./));
  });

  it("the place of a limit that is taken out, and those after it", () => {
    const limit = { kind: "metal", at: "arm" } as const;
    const check: StoredCheck = {
      ...addLimit(addLimit(full, "left", limit), "left", limit),
      choices: { "left.limits.0.place": "mount", "left.limits.1.place": "joint", linkage: "yes" },
    };
    expect(removeLimit(check, "left", 0).choices).toEqual({
      "left.limits.0.place": "joint",
      linkage: "yes",
    });
  });

  it("those of a stop, as another is chosen, put aside and back", () => {
    expect(ids(chooseStop(full, {}, "mm"))).toEqual(without(/^stop\./));
    const hand: StoredCheck = { ...full, choices: { "stop.source": "hand", walk: "short" } };
    const [stop] = demoPack.stops;
    if (stop === undefined) throw new Error("the pack has no stop");
    const fromPack = withPackStop(hand, stop, demoPack, "mm");
    expect(fromPack.choices).toEqual({
      "stop.source": "pack",
      "stop.packId": stop.id,
      walk: "short",
    });
    const back = withStopSource(fromPack, "hand");
    expect(back.choices).toEqual({ "stop.source": "hand", walk: "short" });
    expect(back.entries["stop.freeHeight"]).toEqual(hand.entries["stop.freeHeight"]);
    // A part's id that stood with it waits with it.
    const odd: StoredCheck = { ...hand, choices: { ...hand.choices, "stop.packId": "tall" } };
    const waiting = withStopSource(odd, "pack");
    expect(waiting.choices).toEqual({
      "aside.stop.hand.stop.packId": "tall",
      "stop.source": "pack",
      walk: "short",
    });
    expect(withStopSource(waiting, "hand").choices).toEqual(odd.choices);
  });

  it("what is left out of the demands, as all is usual again; that they were seen stays", () => {
    expect(ids(withUsualRules(full, demoPack))).toEqual(without(/^rules\./));
    const record = changeRecord({ ...full, choices: {} }, (before) => ({
      ...before,
      rules: { events: [] },
    }));
    const found = withEventEntries(record);
    expect(found.choices).toMatchObject({ "rules.obstacle.leftOut": "yes" });
    expect(withEventEntries(found)).toBe(found);
  });

  it("all but what is measured anew after a change, with the stop that stays or another", () => {
    const gone = /^(fullTravel|aside)\.|^(left|right)\.stand$/;
    const { after } = checkAgain(full, demoPack, "mm", inModelUnits);
    expect(ids(after)).toEqual(without(gone));
    const [stop] = demoPack.stops;
    const fitted = withFitted(
      full,
      { partNumber: stop?.partNumber ?? "", revision: stop?.revision ?? "", day: "2026-05-31" },
      "mm",
      inModelUnits,
    );
    const changed = checkAgain(fitted, demoPack, "mm", inModelUnits).after;
    expect(ids(changed)).toEqual(without(gone));
    expect(chosen(changed, "stop.packId")).toBe(stop?.id);
    expect(chosen(changed, "stop.source")).toBe("pack");
  });

  it("only what is demanded to the other axle", () => {
    const { other } = otherAxle(full, demoPack, inModelUnits);
    expect(ids(other)).toEqual(only(/^rules\b/));
  });

  it("none where a reading is typed", () => {
    const typed = setEntry(full, "left.gap", { texts: ["21"], unit: "mm", tol: "" });
    expect(typed.choices).toBe(full.choices);
  });
});

import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import {
  changePack,
  copiedStop,
  forgetPackSteps,
  freeId,
  takeOvertaken,
  undoPackChange,
  undoWords,
  withoutStop,
  withStop,
} from "../../../src/screens/pack/packEdits.ts";
import { readPackRoute } from "../../../src/screens/pack/packRoutes.ts";
import {
  forgetPackInMemory,
  keepReferencePack,
  loadReferencePack,
  referencePack,
} from "../../../src/screens/referencePack.ts";
import { packFile } from "../../../src/sharing/checkFile.ts";
import { openPackStore } from "../../../src/storage/packStore.ts";
import { freshPhone } from "../startApp.tsx";

beforeEach(() => {
  freshPhone();
  forgetPackInMemory();
  forgetPackSteps();
});
afterEach(() => {
  vi.unstubAllGlobals();
  forgetPackInMemory();
});

const named = (name: string) => ({ ...demoPack, name });

describe("a change to the pack", () => {
  it("is in use at once, there again after a reload, and undone step by step", async () => {
    await loadReferencePack();
    await changePack(named("One"), "First");
    await changePack(named("Two"), "Second");
    expect(referencePack().name).toBe("Two");
    forgetPackInMemory();
    await loadReferencePack();
    expect(referencePack().name).toBe("Two");
    expect(undoWords()).toBe("Second");
    await undoPackChange();
    expect(referencePack().name).toBe("One");
    await undoPackChange();
    expect(referencePack()).toEqual(demoPack);
    expect(undoWords()).toBeNull();
    expect(await undoPackChange()).toBeNull();
  });

  it("and its undoing need not wait for one another: a hurried hand is no other tab", async () => {
    await loadReferencePack();
    const changes = [changePack(named("One"), "First"), changePack(named("Two"), "Second")];
    expect(
      (await Promise.all(changes)).map((each) => each.kind === "changed" && each.kept.kind),
    ).toEqual(["kept", "kept"]);
    const undone = await Promise.all([undoPackChange(), undoPackChange()]);
    expect(undone).toEqual([{ kind: "kept" }, { kind: "kept" }]);
    expect(referencePack()).toEqual(demoPack);
    forgetPackInMemory();
    expect((await loadReferencePack()).pack).toEqual(demoPack);
  });

  it("that breaks a rule of packs is refused, and nothing changes", async () => {
    await loadReferencePack();
    const [stop] = demoPack.stops;
    if (!stop) throw new Error("no stop");
    const result = await changePack(withStop(demoPack, { ...stop, curve: [[5, -1]] }), "Wrong");
    expect(result.kind).toBe("refused");
    expect(referencePack()).toEqual(demoPack);
    expect(undoWords()).toBeNull();
  });

  it("that another tab has overtaken is not lost: theirs is in use, mine waits to be merged", async () => {
    await loadReferencePack();
    await keepReferencePack(named("Before"));
    vi.stubGlobal("BroadcastChannel", undefined);
    const otherTab = openPackStore();
    await otherTab.put(named("Theirs"), 1);
    const result = await changePack(named("Mine"), "Mine");
    expect(result.kind === "changed" && result.kept.kind).toBe("changedElsewhere");
    expect(referencePack().name).toBe("Theirs");
    expect(takeOvertaken()?.name).toBe("Mine");
    expect(takeOvertaken()).toBeNull();
    otherTab.close();
  });

  it("that the browser does not keep is in use all the same, and says so", async () => {
    vi.stubGlobal("indexedDB", {
      open: () => {
        throw new DOMException("denied", "SecurityError");
      },
    });
    const result = await changePack(named("Unkept"), "Unkept");
    expect(result.kind === "changed" && result.kept.kind).toBe("notKept");
    expect(referencePack().name).toBe("Unkept");
  });
});

describe("stops", () => {
  it("taken out leave no platform with a usual stop that is gone", () => {
    const platform = demoPack.platforms.find(({ usualStop }) => usualStop !== null);
    if (!platform?.usualStop) throw new Error("no platform");
    const pack = withoutStop(demoPack, platform.usualStop);
    expect(pack.stops).toHaveLength(demoPack.stops.length - 1);
    expect(pack.platforms.find(({ id }) => id === platform.id)?.usualStop).toBeNull();
  });

  it("copied have a name and an id of their own, however often", () => {
    const [stop] = demoPack.stops;
    if (!stop) throw new Error("no stop");
    const once = withStop(demoPack, copiedStop(demoPack, stop));
    const twice = withStop(once, copiedStop(once, stop));
    expect(new Set(twice.stops.map(({ id }) => id)).size).toBe(demoPack.stops.length + 2);
    expect(freeId("Äxle / cone", [])).toBe(freeId("Äxle cone", []));
    expect(freeId("…", ["item"])).toBe("item-2");
  });
});

it("addresses and file names", () => {
  expect(readPackRoute(["pack"])).toEqual({ screen: "pack", place: "list" });
  expect(readPackRoute(["pack", "stop", "a b"])).toEqual({
    screen: "pack",
    place: "stop",
    id: "a b",
  });
  for (const wrong of [["desk"], ["pack", "stop"], ["pack", "stop", "a", "b"], ["pack", "else"]]) {
    expect(readPackRoute(wrong)).toBeNull();
  }
  expect(packFile(named("Marsh Road / pack"), "2026-03-12").name).toBe(
    "stopfit-pack-Marsh-Road-pack-2026-03-12.json",
  );
});

import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { packStops } from "../../../src/records/filling/packStops.ts";
import {
  packRide,
  platformChoices,
  platformSince,
  withPlatform,
} from "../../../src/records/filling/platforms.ts";
import { readDraftText } from "../../../src/records/filling/readDraft.ts";
import {
  hasOwnEvents,
  houseRulesSince,
  rulesInForce,
  usualRules,
  withEvents,
  withHouseNumbers,
  withRoadClass,
  withRoadKurtosis,
  withUse,
  withUsualRules,
} from "../../../src/records/filling/rules.ts";
import { withEstimates } from "../../../src/records/filling/withEstimates.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { Pack } from "../../../src/records/pack/pack.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { checkFileText } from "../../../src/screens/checkFile.ts";
import {
  forgetPackInMemory,
  keepReferencePack,
  referencePack,
} from "../../../src/screens/referencePack.ts";
import { choose, freshPhone, keep, kept, startApp, tap } from "../startApp.tsx";

beforeEach(() => {
  freshPhone();
  forgetPackInMemory();
});

afterEach(() => {
  cleanup();
  forgetPackInMemory();
  vi.unstubAllGlobals();
});

const [shippedStop] = demoPack.stops;
const [shippedPlatform] = demoPack.platforms;
if (!shippedStop || !shippedPlatform) throw new Error("the library that ships is empty");

const ownPack: Pack = {
  ...demoPack,
  name: "Halden Lane pack",
  stops: [
    { ...shippedStop, id: "lane-block", name: "Lane block" },
    {
      ...shippedStop,
      id: "old-block",
      name: "Old block",
      damping: null,
      testedAtSpeed: false,
      estimated: { how: "from 60 Shore A", forceShare: 0.25 },
    },
  ],
  platforms: [{ ...shippedPlatform, id: "lane-van", label: "Lane van", usualStop: "lane-block" }],
  rules: { daily: { speedKmPerH: 70, reserveMm: 7 }, towing: { reserveMm: 9 } },
};

const [lane] = ownPack.platforms;
if (!lane) throw new Error("no platform");

const withRate = (rate: number): Pack => ({
  ...ownPack,
  platforms: [{ ...lane, ride: { ...lane.ride, wheelRateNPerMm: rate } }],
});

const fromPack = (stored: StoredCheck) =>
  withEstimates(
    withChoice(stored, "ride.wheelRateNPerMm.way", "pack"),
    "mm",
    referencePack(),
    inModelUnits,
  );

describe("a pack that was opened", () => {
  it("is the one whose vehicles, stops and demands the check offers, from its first screen on", async () => {
    await keepReferencePack(ownPack);
    // As after a reload: the pack is read from the phone again.
    forgetPackInMemory();
    const stored = newStoredCheck("Van");
    await keep(stored);
    startApp(`#/check/${stored.id}/vehicle`);
    const list = (await screen.findByLabelText(/In the parts library/)) as HTMLSelectElement;
    expect([...list.options].map(({ text }) => text)).toEqual([
      "Not in the list",
      `Lane van, ${lane.axle} axle`,
    ]);
    cleanup();
    startApp(`#/check/${stored.id}/stop`);
    await choose(/In the parts library/);
    await screen.findByRole("radio", { name: /^Lane block/ });
    const estimate = await screen.findByRole("radio", { name: /^Old block/ });
    expect(estimate.closest("label")?.textContent).toMatch(/curve by estimate, ±\s25 %/);
    expect(screen.queryByRole("radio", { name: /^Tall progressive/ })).toBeNull();
    cleanup();
    startApp(`#/check/${stored.id}/use`);
    await choose(/^Daily driving/);
    await waitFor(async () =>
      expect((await kept(stored.id)).record.rules).toEqual({ speedKmPerH: 70, reserveMm: 7 }),
    );
    expect((await kept(stored.id)).record.reference?.pack).toBe("Halden Lane pack");
  });

  it("puts the usual stop of the check's vehicle first", async () => {
    await keepReferencePack({ ...ownPack, stops: [...ownPack.stops].reverse() });
    const stored = withPlatform(newStoredCheck(), lane, referencePack());
    expect(packStops(stored, referencePack()).map(({ id }) => id)).toEqual([
      "lane-block",
      "old-block",
    ]);
  });
});

describe("a later pack", () => {
  it("changes nothing of what a check took from the one before, until that is asked for", async () => {
    await keepReferencePack(withRate(30));
    const stored = fromPack(withPlatform(newStoredCheck(), lane2(30), referencePack()));
    expect(stored.record.ride?.wheelRateNPerMm).toBe(30);
    await keepReferencePack(withRate(44));
    expect(withEstimates(stored, "mm", referencePack(), inModelUnits)).toBe(stored);
    expect(packRide(stored, "wheelRateNPerMm", referencePack())?.value).toBe(30);
    expect(platformSince(stored, referencePack())).toBe("changed");
    const renewed = withEstimates(
      withPlatform(stored, lane2(44), referencePack()),
      "mm",
      referencePack(),
      inModelUnits,
    );
    expect(renewed.record.ride?.wheelRateNPerMm).toBe(44);
    expect(platformSince(renewed, referencePack())).toBeNull();
  });

  it("without its vehicle leaves the check its copy, still to be chosen", async () => {
    await keepReferencePack(ownPack);
    const stored = fromPack(withPlatform(newStoredCheck(), lane, referencePack()));
    await keepReferencePack({ ...ownPack, platforms: [] });
    expect(platformSince(stored, referencePack())).toBe("gone");
    expect(platformChoices(stored, referencePack()).map(({ id }) => id)).toEqual(["lane-van"]);
    expect(withEstimates(stored, "mm", referencePack(), inModelUnits).record).toEqual(
      stored.record,
    );
  });

  it("finds the copy in a check that was saved before it was complete and opened elsewhere", async () => {
    await keepReferencePack(withRate(30));
    const stored = fromPack(
      withUse(
        withPlatform(newStoredCheck("Van"), lane2(30), referencePack()),
        "daily",
        referencePack(),
      ),
    );
    const file = checkFileText(stored);
    await keepReferencePack(demoPack);
    const draft = readDraftText(file);
    const opened = draft && withEstimates(draft, "mm", referencePack(), inModelUnits);
    expect(opened?.record.reference).toEqual(stored.record.reference);
    expect(opened?.record.rules).toEqual(stored.record.rules);
    expect(opened?.record.ride?.wheelRateNPerMm).toBe(30);
    expect(opened && platformSince(opened, referencePack())).toBe("gone");
  });

  it("is told on the vehicle's screen, with a way to take it over", async () => {
    await keepReferencePack(withRate(30));
    const stored = fromPack(withPlatform(newStoredCheck("Van"), lane2(30), referencePack()));
    await keep(stored);
    await keepReferencePack(withRate(44));
    startApp(`#/check/${stored.id}/vehicle`);
    await screen.findByText(/now has other values for this vehicle/);
    await tap("Take the new values");
    await waitFor(async () =>
      expect((await kept(stored.id)).record.ride?.wheelRateNPerMm).toBe(44),
    );
  });
});

function lane2(rate: number) {
  const [platform] = withRate(rate).platforms;
  if (!platform) throw new Error("no platform");
  return platform;
}

describe("house rules", () => {
  it("are what is usual for a use, and the record has a copy of them", async () => {
    await keepReferencePack(ownPack);
    const daily = withUse(newStoredCheck(), "daily", referencePack());
    expect(usualRules(daily)).toMatchObject({ speedKmPerH: 70, reserveMm: 7, roadClass: "C" });
    expect(rulesInForce(daily)).toEqual(usualRules(daily));
    const towing = withUse(daily, "towing", referencePack());
    expect(towing.record.rules).toEqual({ reserveMm: 9 });
    const offroad = withUse(towing, "offroad", referencePack());
    expect(offroad.record).not.toHaveProperty("rules");
    expect(offroad.record).not.toHaveProperty("reference");
  });

  it("give way to what is typed, and come back where that is taken out", async () => {
    await keepReferencePack(ownPack);
    const type = (stored: StoredCheck, text: string) =>
      withHouseNumbers(setEntry(stored, "rules.reserveMm", { texts: [text], unit: "mm", tol: "" }));
    const typed = type(withUse(newStoredCheck(), "daily", referencePack()), "3");
    expect(typed.record.rules).toEqual({ speedKmPerH: 70, reserveMm: 3 });
    // What was typed stays with another use, though it has house rules of its own.
    expect(withUse(typed, "towing", referencePack()).record.rules).toEqual({ reserveMm: 3 });
    expect(type(typed, "").record.rules).toEqual({ speedKmPerH: 70, reserveMm: 7 });
    const rough = withRoadClass(typed, "D");
    expect(rough.record.rules?.roadClass).toBe("D");
    expect(withRoadClass(rough, "C").record.rules).not.toHaveProperty("roadClass");
    expect(withUsualRules(rough, referencePack()).record.rules).toEqual({
      speedKmPerH: 70,
      reserveMm: 7,
    });
  });

  it("of a later pack wait until “Reset to typical” takes them over", async () => {
    await keepReferencePack(ownPack);
    const stored = withUse(newStoredCheck(), "daily", referencePack());
    expect(houseRulesSince(stored, referencePack())).toBe(false);
    await keepReferencePack({ ...ownPack, rules: { daily: { reserveMm: 12 } } });
    expect(houseRulesSince(stored, referencePack())).toBe(true);
    expect(rulesInForce(stored).reserveMm).toBe(7);
    const renewed = withUsualRules(stored, referencePack());
    expect(renewed.record.rules).toEqual({ reserveMm: 12 });
    expect(houseRulesSince(renewed, referencePack())).toBe(false);
  });

  it("give way to another evenness of the road, which says nothing where it is the usual one", () => {
    const stored = withUse(newStoredCheck(), "daily", referencePack());
    const even = withRoadKurtosis(stored, 3);
    expect(even.record.rules?.roadKurtosis).toBe(3);
    expect(rulesInForce(even).roadKurtosis).toBe(3);
    expect(withRoadKurtosis(even, 5).record.rules).toBeUndefined();
  });

  it("keep a hump that came with a check beside the usual events", () => {
    const stored = withUse(newStoredCheck(), "daily", referencePack());
    const hump = { kind: "hump", heightM: 0.1, lengthM: 3.7, speedKmPerH: 40 } as const;
    const events = [...rulesInForce(stored).events, hump];
    const own = { ...stored, record: { ...stored.record, rules: { events } } };
    expect(hasOwnEvents(own)).toBe(true);
    expect(withEvents(own).record.rules?.events).toEqual(events);
  });

  it("that say common practice's own value again let a check choose it against them", async () => {
    await keepReferencePack({ ...ownPack, rules: { daily: { roadClass: "D" } } });
    const stored = withUse(newStoredCheck(), "daily", referencePack());
    expect(rulesInForce(stored).roadClass).toBe("D");
    const smooth = withRoadClass(stored, "C");
    expect(rulesInForce(smooth).roadClass).toBe("C");
    expect(rulesInForce(withRoadClass(smooth, "D")).roadClass).toBe("D");
  });
});

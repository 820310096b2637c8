import { describe, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { type Pack, recordStop, takenFrom } from "../../../src/records/pack/pack.ts";
import { packSince } from "../../../src/records/pack/packSince.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../screens/answer/demoChecks.ts";

const record = demoRecord("arm-fits");
const said = (pack: Pack, of = record) => packSince(of, pack).map(inModelUnits);

describe("what a check holds of a pack that has changed since", () => {
  it("is nothing while the pack is as it was, whatever the order of its fields", () => {
    expect(said(demoPack)).toEqual([]);
    const turned = demoPack.stops.map((stop) =>
      Object.fromEntries(Object.entries(stop).reverse()),
    ) as unknown as Pack["stops"];
    expect(said({ ...demoPack, stops: turned })).toEqual([]);
  });

  it("is told for the stop, and the check's own copy still is what it was", () => {
    const before = JSON.stringify(record);
    const stops = demoPack.stops.map((stop) =>
      stop.name === record.stop.name ? { ...stop, usableCompressionMm: 30 } : stop,
    );
    const changed = { ...demoPack, stops };
    expect(said(changed)).toHaveLength(1);
    expect(said(changed)[0]).toContain(record.stop.name);
    expect(said(changed)[0]).toContain("usable compression");
    expect(JSON.stringify(record)).toBe(before);
    expect(said({ ...demoPack, stops: [] })).toEqual([]);
  });

  it("is not told for what the pack only adds beside the curve: tests, material, notes", () => {
    const stops = demoPack.stops.map((stop) => ({ ...stop, material: "cork", tests: [] }));
    expect(said({ ...demoPack, stops })).toEqual([]);
    expect(stops[0] && recordStop(stops[0])).not.toHaveProperty("tests");
  });

  it("is told for ride data that the check took from the pack, not for what was measured", () => {
    const platform = demoPack.platforms.find(({ id }) => id === "marlow-utility-front");
    if (!platform) throw new Error("no platform");
    const rate = (platform.ride?.wheelRateNPerMm ?? 0) + 1;
    const of = (estimated: { readonly wheelRateNPerMm?: string }) => ({
      ...record,
      vehicle: { ...record.vehicle, platformId: platform.id },
      ride: { ...record.ride, wheelRateNPerMm: rate, estimated },
    });
    expect(said(demoPack, of({ wheelRateNPerMm: "parts library, Marlow, front axle" }))).toEqual([
      "The wheel rate came from the library, which has another value now. The answer holds for the one in the check.",
    ]);
    expect(said(demoPack, of({ wheelRateNPerMm: "from 21.0 mm of sag under 60 kg" }))).toEqual([]);
  });

  it("is told for the copy of its platform, field by field, whatever was measured since", () => {
    const [platform] = demoPack.platforms;
    if (!platform) throw new Error("no platform");
    const reference = takenFrom(demoPack, { platform });
    const taken = {
      ...record,
      vehicle: { ...record.vehicle, platformId: platform.id },
      ...(reference && { reference }),
    };
    expect(said(demoPack, taken)).toEqual([]);
    const heavier = { ...platform, cornerMassKg: { values: [700], tol: 20 }, notes: "New notes" };
    const [sentence] = said({ ...demoPack, platforms: [heavier] }, taken);
    expect(sentence).toContain(platform.label);
    expect(sentence).toMatch(/weight|mass/);
    expect(said({ ...demoPack, platforms: [{ ...platform, notes: "New notes" }] }, taken)).toEqual(
      [],
    );
  });

  it("is told for the house rules of its use only, taken or not", () => {
    const rules = { ...demoPack.rules, [record.vehicle.use]: { reserveMm: 12 } };
    expect(said({ ...demoPack, rules })[0]).toContain("that this check did not take");
    const reference = takenFrom(demoPack, { rules: { reserveMm: 12 } });
    const taken = { ...record, ...(reference && { reference }) };
    expect(said({ ...demoPack, rules }, taken)).toEqual([]);
    expect(said(demoPack, taken)[0]).toContain("not those that this check took");
  });

  it("is not told for a height that was measured on the part itself", () => {
    const freeHeight = { values: [record.stop.freeHeight.values[0] ?? 0], tol: 2 };
    const of = (typed?: readonly string[]) => ({
      ...record,
      stop: { ...record.stop, freeHeight: { ...freeHeight, ...(typed && { typed }) } },
    });
    expect(said(demoPack, of(["61 mm"]))).toEqual([]);
    expect(said(demoPack, of())).toHaveLength(1);
  });
});

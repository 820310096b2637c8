import { describe, expect, it } from "vitest";
import { geometryNames } from "../../src/physics/layouts/geometryRegistry.ts";
import { bareReadingName, limitTouches, readingName } from "../../src/physics/readingNames.ts";
import { said } from "../../src/saying/texts.ts";

describe("the name of a reading", () => {
  // The fields of record.md, in the words that a mechanic reads.
  it.each([
    ["pivotToStop", "the distance from pivot to stop"],
    ["pivotToOuter", "the distance from pivot to outer joint"],
    ["pivotToMount", "the distance from pivot to shock mount"],
    ["armAngle", "the arm angle"],
    ["stopLineAngle", "the angle of the line from pivot to stop"],
    ["mountLineAngle", "the angle of the line from pivot to shock mount"],
    ["stopLean", "the lean of the stop"],
    ["damperLength", "the shock length"],
    ["track", "the track"],
    ["stopSpacing", "the spacing of the stops"],
    ["left.gap", "the left gap"],
    ["right.gap", "the right gap"],
    ["left.rideHeight", "the left ride height"],
    ["right.cornerMassKg", "the right corner weight"],
    ["right.armAngle", "the right arm angle"],
    ["stop.freeHeight", "the free height of the stop"],
    ["stop.curve", "the force curve of the stop"],
    ["ride.unsprungMassKg", "the unsprung mass"],
    ["ride.wheelRateNPerMm", "the wheel rate"],
    ["ride.tyreRateNPerMm", "the tire rate"],
    ["ride.damperBumpNsPerMm", "the damping in bump"],
    ["ride.damperReboundNsPerMm", "the damping in rebound"],
    ["ride.payloadPerCornerKg", "the payload"],
  ])("%s: %s", (id, name) => {
    expect(said(readingName(id))).toBe(name);
  });

  it.each([
    ["tyre", "clearance over the tire", "the tire touches"],
    ["damper", "shock travel left", "the shock reaches its end"],
    ["spring", "spring travel left", "the spring closes up"],
    ["metal", "metal to metal clearance", "metal touches metal"],
    ["other", "other clearance", "something hard touches"],
  ] as const)("a hard limit of kind %s", (kind, clearance, touches) => {
    expect(said(readingName("left.limits.0", kind))).toBe(`the left ${clearance}`);
    expect(said(readingName("right.limits.3", kind))).toBe(`the right ${clearance}`);
    expect(said(limitTouches[kind])).toBe(touches);
  });

  it("a hard limit whose kind is not known", () => {
    expect(said(readingName("right.limits.1"))).toBe("the right clearance to the hard contact");
  });

  it("a kind belongs to limits alone", () => {
    expect(said(readingName("left.gap", "tyre"))).toBe("the left gap");
  });

  it("one that is not known, by its last part, even where it is called as what every object has", () => {
    expect(said(readingName("left.somethingElse"))).toBe("the left somethingElse");
    expect(said(readingName("ride.constructor"))).toBe("the constructor");
    expect(said(readingName("toString"))).toBe("the toString");
  });

  it("stands without its article at the start of a line", () => {
    expect(said(bareReadingName("left.gap"))).toBe("left gap");
    expect(said(bareReadingName("fullTravel.left.stop.wheelTravel"))).toBe(
      "left wheel travel at the stop's contact",
    );
  });

  it("every reading of every layout has one of its own", () => {
    const names = new Map(geometryNames.map((name) => [name, said(readingName(name))]));
    expect(new Set(names.values()).size).toBe(names.size);
    for (const [place, name] of names) if (place !== "track") expect(name).not.toContain(place);
  });
});

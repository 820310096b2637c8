import { describe, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { type Mounting, mountable, mountingText } from "../../../src/records/pack/mounting.ts";
import type { Pack } from "../../../src/records/pack/pack.ts";
import {
  mountsHere,
  prescribable,
  searchOptionsOf,
  spacersOf,
} from "../../../src/records/pack/packCandidates.ts";
import { readPackValue } from "../../../src/records/pack/readPack.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import { sentenceText } from "../../../src/saying/sentenceText.ts";
import { demoFitment } from "../../physics/demoFitments.ts";

const stud: Mounting = { way: "stud", sizeMm: 10, pitchMm: 1.5 };

describe("a mounting", () => {
  it.each<[string, Mounting | undefined, Mounting | null, ReturnType<typeof mountable>]>([
    ["the same stud", stud, stud, "yes"],
    ["another thread", { ...stud, sizeMm: 12 }, stud, "no"],
    ["another pitch", { ...stud, pitchMm: 1.25 }, stud, "no"],
    ["another way", { way: "rod", sizeMm: 10 }, stud, "no"],
    ["a pitch that is not known", { way: "stud", sizeMm: 10 }, stud, "check"],
    ["a thread that is not known", { way: "stud" }, stud, "check"],
    ["neither thread known", { way: "stud" }, { way: "stud" }, "check"],
    ["nothing known of the stop", undefined, stud, "check"],
    ["nothing known of the place", stud, null, "check"],
    ["a foot that is too wide", { ...stud, seatMm: 80 }, { ...stud, seatMm: 70 }, "no"],
    ["a foot with room", { ...stud, seatMm: 60 }, { ...stud, seatMm: 70 }, "yes"],
    ["another layout", { ...stud, layouts: ["strut"] }, stud, "no"],
  ])("%s", (_, stop, place, wanted) => {
    expect(mountable(stop ? { mount: stop } : {}, place, "arm")).toBe(wanted);
  });

  it("needs room across for the stop itself, where the place says how much there is", () => {
    const place = { ...stud, roomMm: 70 };
    expect(mountable({ mount: stud, outerDiameterMm: 75 }, place, "arm")).toBe("no");
    expect(mountable({ mount: stud, outerDiameterMm: 70 }, place, "arm")).toBe("yes");
    expect(mountable({ mount: stud }, place, "arm")).toBe("check");
    expect(mountable({ mount: stud }, { ...stud, seatMm: 70 }, "arm")).toBe("check");
  });

  it("is told by its thread or bore", () => {
    expect(sentenceText(mountingText(stud), "mm")).toBe("threaded stud M10 × 1.5");
    expect(withPlainSpaces(sentenceText(mountingText({ way: "rod", sizeMm: 22 }), "mm"))).toBe(
      "on the shock rod, 22.0 mm",
    );
  });
});

describe("the stops of a pack for one check", () => {
  const fitment = demoFitment("arm-fits");
  const check = { ...fitment, vehicle: { platformId: null } };
  const mounting = (wanted: string) =>
    demoPack.stops.filter((stop) => mountsHere(demoPack, check)(stop) === wanted);

  it("a stop for a damper rod is never prescribed for an arm", () => {
    const offered = prescribable(demoPack, check, fitment).map(({ id }) => id);
    expect(offered.length).toBeGreaterThan(0);
    expect(mounting("no").map(({ id }) => id)).toContain("rod-stop");
    for (const { id } of mounting("no")) expect(offered).not.toContain(id);
    expect(offered).not.toContain("rod-stop");
  });

  it("a mounting that is not known is no yes: the fitted build in other classes is tried instead", () => {
    const unknown: Pack = {
      ...demoPack,
      stops: demoPack.stops.map(({ mount: _, ...stop }) => stop),
    };
    const other = unknown.stops.find(({ name }) => name !== fitment.stop.name);
    expect(other && mountsHere(unknown, check)(other)).toBe("check");
    const names = prescribable(unknown, check, fitment).map(({ stop }) => stop.name);
    expect(new Set(names)).toEqual(new Set([fitment.stop.name]));
  });

  it("what the platform takes goes before what the fitted stop has", () => {
    const onPlatform = { ...check, vehicle: { platformId: "marlow-utility-rear" } };
    const axleCone = demoPack.stops.find(({ id }) => id === "axle-cone");
    expect(axleCone && mountsHere(demoPack, onPlatform)(axleCone)).toBe("yes");
    expect(axleCone && mountsHere(demoPack, check)(axleCone)).toBe("no");
  });
});

describe("spacers that can be bought", () => {
  it("are the pack's own, else those of the person's unit", () => {
    expect(spacersOf({ spacersMm: [20, 10, 20] }, "in")).toEqual([10, 20]);
    expect(spacersOf(null, "mm")).toEqual([5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60]);
    const inches = spacersOf(null, "in").map((mm) => mm / 25.4);
    expect([inches[0], inches.at(-1), inches.length]).toEqual([0.125, 2.5, 20]);
  });

  it("are refused where they can't be", () => {
    const refused = readPackValue({ ...demoPack, spacersMm: [0] });
    expect(refused.ok).toBe(false);
    expect(readPackValue(demoPack).ok).toBe(true);
  });
});

describe("the travel that a vehicle was made with", () => {
  const fitment = demoFitment("arm-fits");

  it("is the platform's, where the check names one of the same layout", () => {
    const check = { ...fitment, vehicle: { platformId: "marlow-utility-front" } };
    const made = searchOptionsOf(demoPack, check, fitment, "mm").madeWith;
    expect(made?.map(({ side }) => side)).toEqual(["left", "right"]);
    expect(made?.[0]?.wheelTravelToContactMm).toBeGreaterThan(30);
    const other = { ...fitment, vehicle: { platformId: "marlow-utility-rear" } };
    expect(searchOptionsOf(demoPack, other, fitment, "mm")).not.toHaveProperty("madeWith");
  });

  it("is that of the fitted stop otherwise", () => {
    const check = { ...fitment, vehicle: { platformId: null } };
    expect(searchOptionsOf(demoPack, check, fitment, "mm")).not.toHaveProperty("madeWith");
  });
});

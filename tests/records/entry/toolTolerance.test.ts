import fc from "fast-check";
import { describe, expect, it } from "vitest";
import demo from "../../../demo-data/checks/arm-fits.json" with { type: "json" };
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import { type Entry, entryOfReading, readEntry } from "../../../src/records/entry/entry.ts";
import { toolGroupOf, usualReach } from "../../../src/records/entry/readingTools.ts";
import { reaches, type ToolId, toolIds } from "../../../src/records/entry/tools.ts";
import {
  caliperLimit,
  graduationOf,
  toolsOf,
  toolTolerance,
} from "../../../src/records/entry/toolTolerance.ts";

function halfWidth(
  tool: ToolId,
  value: number,
  more: Partial<Parameters<typeof toolTolerance>[0]> = {},
) {
  const outcome = toolTolerance({
    tool,
    reach: "clear",
    kind: "length",
    value,
    unit: "mm",
    ...more,
  });
  if (!outcome.ok) throw new Error("no ±");
  return outcome.value.halfWidth;
}

describe("the ± from the tool", () => {
  // By hand: √((0.3 + 0.2·1 + 0.2)² + 0.5²) = √0.74 = 0.8602, rounded up; JCGM 100:2008, 5.1.2.
  it("joins a class II tape's limit and half its graduation", () => {
    expect(halfWidth("tapeII", 400)).toBe(0.87);
    expect(halfWidth("tapeII", 1600)).toBe(1.03);
    expect(halfWidth("tapeI", 400)).toBe(0.59);
    expect(halfWidth("tapeIII", 400)).toBe(1.4);
  });

  it("takes a tape without a mark as class III", () => {
    expect(halfWidth("tape", 900)).toBe(halfWidth("tapeIII", 900));
  });

  it("reads an inch tape in sixteenths, or in the finer fraction that was typed", () => {
    expect(graduationOf("tapeII", "in")).toBeCloseTo(25.4 / 16, 12);
    expect(graduationOf("tapeII", "in", ["2 5/16"])).toBeCloseTo(25.4 / 16, 12);
    expect(graduationOf("tapeII", "in", ["2 3/4", "2 11/32"])).toBeCloseTo(25.4 / 32, 12);
    expect(graduationOf("rule", "in", ["2 1/4"])).toBeCloseTo(25.4 / 32, 12);
    // √(0.7² + (25.4/32)²) = 1.0583
    expect(halfWidth("tapeII", 60, { unit: "in" })).toBe(1.06);
  });

  it("adds what getting at the points costs (common practice)", () => {
    // √(0.74 + 4) = 2.1772; √(0.74 + 25) = 5.0735
    expect(halfWidth("tapeII", 400, { reach: "awkward" })).toBe(2.18);
    expect(halfWidth("tapeII", 400, { reach: "far" })).toBe(5.08);
    expect(halfWidth("angleGauge", 8, { kind: "angle", unit: "deg" })).toBe(0.21);
    expect(halfWidth("wheelScales", 500, { kind: "mass", unit: "kg", reach: "far" })).toBe(2.07);
  });

  // DIN 862, secondary table: 50 µm to 300 mm, 60 at 400, 120 at 1000; 20 µm more for inside and depth.
  it.each([
    [50, 0.07],
    [300, 0.07],
    [400, 0.08],
    [1000, 0.14],
  ])("has a caliper's limit at %s mm", (length, limit) => {
    const outcome = caliperLimit(length);
    expect(outcome.ok && outcome.value).toBeCloseTo(limit, 12);
  });

  it("says so where the tool does not reach", () => {
    for (const [tool, value] of [
      ["feeler", 12],
      ["caliper", 1500],
    ] as const) {
      const outcome = toolTolerance({ tool, reach: "clear", kind: "length", value, unit: "mm" });
      expect(outcome.ok).toBe(false);
    }
  });

  it("is finite, above 0 and never less than any of its shares", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...toolIds),
        fc.constantFrom(...reaches),
        fc.constantFrom("length" as const, "angle" as const, "mass" as const),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (tool, reach, kind, value) => {
          const outcome = toolTolerance({ tool, reach, kind, value, unit: "mm" });
          if (!outcome.ok) throw new Error("no ±");
          const { limit, reading, placing, halfWidth: all } = outcome.value;
          expect(all).toBeGreaterThan(0);
          expect(all).toBeGreaterThanOrEqual(Math.max(limit, reading, placing));
          expect(all).toBeLessThanOrEqual(limit + reading + placing + 0.01);
        },
      ),
    );
  });
});

const gap = (more: Partial<Entry>): Entry => ({ texts: ["58.7"], unit: "mm", tol: "", ...more });

describe("a reading and its tool", () => {
  it("has the tool's ±, and the tool beside it", () => {
    const read = readEntry("left.gap", gap({ tool: "tapeII", reach: "clear" }));
    expect(read.ok && read.value).toEqual({
      values: [58.7],
      tol: 0.87,
      typed: ["58.7 mm"],
      tool: "tapeII",
      reach: "clear",
    });
  });

  it("has the ± that was typed, whatever the tool", () => {
    const read = readEntry("left.gap", gap({ tool: "tapeII", tol: "3" }));
    expect(read.ok && read.value.tol).toBe(3);
    expect(read.ok && read.value.tool).toBe("tapeII");
  });

  it("has the usual ± with no tool, an unknown one, and one that does not reach", () => {
    for (const more of [{}, { tool: "laser of the year 2040" }, { tool: "feeler" }]) {
      const read = readEntry("left.gap", gap(more));
      expect(read.ok && read.value.tol).toBe(1);
    }
  });

  it("follows the length", () => {
    const at = (text: string) => {
      const read = readEntry("track", {
        texts: [text],
        unit: "mm",
        tol: "",
        tool: "tapeIII",
        reach: "clear",
      });
      return read.ok ? read.value.tol : null;
    };
    expect(at("950")).toBe(1.4);
    expect(at("1450")).toBe(1.78);
  });

  it("comes back from a record as it was entered", () => {
    for (const entry of [
      gap({ tool: "caliper", reach: "clear" }),
      gap({ tool: "tapeII", reach: "awkward", tol: "3" }),
      gap({ texts: ["2 5/32"], unit: "in", tool: "tapeI", reach: "clear" }),
      gap({ texts: ["58", "59"], tool: "rule", reach: "far" }),
    ]) {
      const read = readEntry("left.gap", entry);
      if (!read.ok) throw new Error("unreadable");
      expect(entryOfReading("left.gap", read.value, entry.unit)).toEqual(entry);
    }
  });

  it("comes back in the unit its number is in, where nothing typed was kept with it", () => {
    expect(entryOfReading("left.gap", { values: [36], tol: 1 }, "in")).toMatchObject({
      texts: ["36"],
      unit: "mm",
      tol: "1",
    });
    expect(entryOfReading("left.gap", { values: [25.4], tol: 25.4 }, "in")).toMatchObject({
      texts: ["1"],
      unit: "in",
    });
    expect(entryOfReading("left.gap", { values: [36, 25.4], tol: 1 }, "in")).toMatchObject({
      texts: ["36 mm", "1"],
      unit: "in",
    });
  });

  it("is let through by the record's validation, and a tool that is no text is not", () => {
    const withTool = (tool: unknown) => {
      const record = structuredClone(demo) as unknown as {
        corners: { gap: { tool?: unknown } }[];
      };
      for (const corner of record.corners) corner.gap.tool = tool;
      return readCheckValue(record);
    };
    const read = withTool("tapeII");
    expect(read.ok && read.value.corners[0]?.gap?.tool).toBe("tapeII");
    expect(withTool({ not: "a text" }).ok).toBe(false);
  });

  it("belongs to a group that has tools for it", () => {
    expect(toolGroupOf("left.gap")).toBe("near");
    expect(toolGroupOf("right.limits.2")).toBe("near");
    expect(toolGroupOf("pivotToStop")).toBe("length");
    expect(toolGroupOf("armAngle")).toBe("angle");
    expect(toolGroupOf("left.cornerMassKg")).toBe("mass");
    expect(toolGroupOf("ride.wheelRateNPerMm")).toBeNull();
    expect(usualReach("left.gap")).toBe("clear");
    expect(usualReach("pivotToStop")).toBe("awkward");
    expect(usualReach("track")).toBe("far");
    for (const group of ["near", "length", "angle", "mass"] as const) {
      expect(toolsOf(group).length).toBeGreaterThan(2);
    }
  });
});

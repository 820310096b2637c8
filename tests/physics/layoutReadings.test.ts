import { describe, expect, it } from "vitest";
import type { Corner, Layout } from "../../src/physics/fitment.ts";
import { geometryPlaces, geometryReadings } from "../../src/physics/layoutReadings.ts";
import { exact } from "./staticFitments.ts";

/** Each place in one line: name, sort, the reading that fills it and its value, or what is missing. */
function told(layout: Layout, geometry?: Corner["geometry"], side?: Corner["side"]): string[] {
  return geometryReadings(layout, geometry, side).map(({ name, sort, id, reading, present }) => {
    const value = reading === null ? "none" : `${reading.values.join()}`;
    return `${name} (${sort}) = ${id} ${value}${present ? "" : ", missing"}`;
  });
}

const arm: Layout = {
  kind: "arm",
  readings: { pivotToStop: exact(150), pivotToOuter: exact(400), armAngle: exact(12) },
};

describe("the readings that a layout is computed from", () => {
  // record.md: angles default to 0, stopLineAngle and mountLineAngle to armAngle; lengths to nothing.
  it("an arm: what was not measured is the arm's angle, or 0", () => {
    expect(told(arm)).toEqual([
      "pivotToStop (length) = pivotToStop 150",
      "pivotToOuter (length) = pivotToOuter 400",
      "armAngle (angle) = armAngle 12",
      "stopLineAngle (angle) = armAngle 12",
      "stopLean (angle) = stopLean none",
    ]);
  });

  it("an arm: what was measured stands in its own place", () => {
    const layout: Layout = {
      ...arm,
      readings: { ...arm.readings, stopLineAngle: exact(7), stopLean: exact(-3) },
    };
    expect(told(layout).slice(3)).toEqual([
      "stopLineAngle (angle) = stopLineAngle 7",
      "stopLean (angle) = stopLean -3",
    ]);
  });

  it("an arm whose angle was not measured either has 0 for both", () => {
    const layout: Layout = {
      kind: "arm",
      readings: { pivotToStop: exact(150), pivotToOuter: exact(400) },
    };
    expect(told(layout).slice(2)).toEqual([
      "armAngle (angle) = armAngle none",
      "stopLineAngle (angle) = stopLineAngle none",
      "stopLean (angle) = stopLean none",
    ]);
  });

  it("a damper", () => {
    const layout: Layout = {
      kind: "damper",
      readings: {
        pivotToMount: exact(220),
        pivotToOuter: exact(380),
        armAngle: exact(5),
        damperLength: exact(430),
      },
    };
    expect(told(layout)).toEqual([
      "pivotToMount (length) = pivotToMount 220",
      "pivotToOuter (length) = pivotToOuter 380",
      "armAngle (angle) = armAngle 5",
      "mountLineAngle (angle) = armAngle 5",
      "stopLean (angle) = stopLean none",
      "damperLength (length) = damperLength 430",
    ]);
  });

  it("a strut, and a beam axle", () => {
    expect(told({ kind: "strut", readings: {} })).toEqual(["stopLean (angle) = stopLean none"]);
    expect(told({ kind: "strut", readings: { stopLean: exact(8) } })).toEqual([
      "stopLean (angle) = stopLean 8",
    ]);
    const readings = { track: exact(1500), stopSpacing: exact(900) };
    expect(told({ kind: "axle", readings })).toEqual([
      "track (length) = track 1500",
      "stopSpacing (length) = stopSpacing 900",
      "stopLean (angle) = stopLean none",
    ]);
  });

  it("a length that was not measured is missing, whatever the layout", () => {
    for (const kind of ["arm", "damper", "strut", "axle"] as const) {
      const lines = told({ kind, readings: {} } as unknown as Layout);
      for (const line of lines)
        expect(line).toMatch(/\(length\) = \w+ none, missing$|\(angle\) = \w+ none$/);
      expect(lines).toHaveLength(geometryPlaces[kind].length);
    }
  });

  it("a corner's own come before the layout's, and carry its side where it is told", () => {
    const own = { pivotToStop: exact(148), armAngle: exact(9) };
    expect(told(arm, own, "right")).toEqual([
      "pivotToStop (length) = right.pivotToStop 148",
      "pivotToOuter (length) = pivotToOuter 400",
      "armAngle (angle) = right.armAngle 9",
      "stopLineAngle (angle) = right.armAngle 9",
      "stopLean (angle) = stopLean none",
    ]);
    expect(told(arm, own)[0]).toBe("pivotToStop (length) = pivotToStop 148");
  });
});

import { describe, expect, it } from "vitest";
import { type ComparedCorner, compareWithVectors, vectorExamples, vectorIds } from "./vectors.ts";

// The comparison itself must be able to fail: each kind of figure, moved by more than its tolerance.

const id = "6f6c1c9e-0000-4000-8000-000000000003";

function corners(): (ComparedCorner & Record<string, unknown>)[] {
  const example = structuredClone(vectorExamples.find((candidate) => candidate.id === id));
  return (example?.corners ?? []).map((corner) => ({
    ...corner,
    checks: [
      { id: "clearance", state: corner.clearance },
      { id: "earlyContact", state: String(corner.earlyContact) },
      { id: "stiffness", state: String(corner.stiffness) },
    ],
  }));
}

type Figures = Record<string, unknown>;

function disagreementsWith(change: (corner: Figures) => Figures): readonly string[] {
  const [first, ...others] = corners();
  const changed = { ...first, ...change(first ?? {}) } as ComparedCorner;
  return compareWithVectors(id, [changed, ...others]).disagreements;
}

describe("the comparison with the vectors", () => {
  it("finds the vectors' own figures in agreement, all of them", () => {
    expect(vectorIds).toHaveLength(17);
    const { compared, disagreements } = compareWithVectors(id, corners());
    expect(disagreements).toEqual([]);
    expect(compared).toBeGreaterThan(50);
  });

  it.each<[string, (corner: Figures) => Figures]>([
    ["leverRatio", ({ leverRatio }) => ({ leverRatio: Number(leverRatio) * (1 + 3e-6) })],
    ["reserveMm", () => ({ reserveMm: Number.NaN })],
    ["hardLimit", () => ({ hardLimit: "tyre" })],
    ["classesThatWork", () => ({ classesThatWork: [63] })],
    ["clearanceProbability", () => ({ clearanceProbability: 0.9 })],
    ["clearance", () => ({ checks: [{ id: "clearance", state: "care" }] })],
    ["oneWheel", () => ({ oneWheel: {} })],
    ["intervals", () => ({ intervals: { reserveMm: [0, 1] } })],
    ["events", ({ events }) => ({ events: (events as Figures[]).slice(1) })],
    [
      "events",
      ({ events }) => ({
        events: (events as Figures[]).map((event) => ({
          ...event,
          peakWheelTravelMm: 1.003 * Number(event.peakWheelTravelMm),
        })),
      }),
    ],
  ])("finds a wrong %s", (figure, change) => {
    expect(disagreementsWith(change).some((line) => line.startsWith(`left ${figure}:`))).toBe(true);
  });

  it("finds a missing corner and an unknown record", () => {
    expect(compareWithVectors(id, corners().slice(0, 1)).disagreements.length).toBeGreaterThan(1);
    expect(compareWithVectors("none", []).disagreements).toHaveLength(1);
  });
});

import { describe, expect, it } from "vitest";
import { orientCycles } from "../../../src/physics/stopTests/orientCycles.ts";
import { timedSamples } from "../../../src/physics/stopTests/timedSamples.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { given } from "./outcomes.ts";

const columns = (displacementMm: readonly number[], forceN: readonly number[]) => ({
  timeS: Float64Array.from(displacementMm, (_, place) => place),
  displacementMm: Float64Array.from(displacementMm),
  forceN: Float64Array.from(forceN),
});

function oriented(
  displacement: readonly number[],
  force: readonly number[],
  factors?: { readonly displacement: number; readonly force: number },
) {
  const { samples, forceSignKnown, remarks } = given(
    orientCycles(columns(displacement, force), factors),
  );
  return {
    displacement: [...samples.displacementMm],
    force: [...samples.forceN],
    forceSignKnown,
    told: remarks.map(({ code, sentence }) => `${code}: ${inModelUnits(sentence)}`),
  };
}

const swapped =
  "columnsSwapped: The columns of displacement and force were taken for each other in the file; they were put right.";
const forceTurned = "forceReversed: The file counts a pushing force as negative; it was turned.";
const depthTurned =
  "depthReversed: In the file the displacement falls as the stop is pressed; it was turned.";

describe("samples of a cyclic test", () => {
  /** Samples of these times, each with its place as displacement and ten times that as force. */
  const timed = (timeS: readonly number[]) => ({
    kind: "cycles" as const,
    timeS: Float64Array.from(timeS),
    displacementMm: Float64Array.from(timeS, (_, place) => place),
    forceN: Float64Array.from(timeS, (_, place) => 10 * place),
  });
  const seconds = (count: number) => Array.from({ length: count }, (_, place) => place);
  const refusal = (timeS: readonly number[]) => {
    const outcome = timedSamples(timed(timeS));
    return outcome.ok ? "none" : `${outcome.fault.code}: ${inModelUnits(outcome.fault.sentence)}`;
  };

  it("are 32 at least", () => {
    expect(refusal(seconds(31))).toBe(
      "tooFewSamples: The file holds fewer than 32 usable samples, too few for a test. Record at least two whole cycles.",
    );
    expect(refusal(seconds(32))).toBe("none");
  });

  it("that are not after the latest before are left out, from every column", () => {
    const times = seconds(200);
    times[50] = 49;
    times[120] = 30;
    const { samples, remarks } = given(timedSamples(timed(times)));
    const kept = seconds(200).filter((place) => place !== 50 && place !== 120);
    expect([...samples.timeS]).toEqual(kept);
    expect([...samples.displacementMm]).toEqual(kept);
    expect([...samples.forceN]).toEqual(kept.map((place) => 10 * place));
    expect(remarks.map(({ code, sentence }) => `${code}: ${inModelUnits(sentence)}`)).toEqual([
      "rowsLeftOut: 2 rows whose time is not after the row before were left out.",
    ]);
  });

  it("may be out of order by one in a hundred, no more", () => {
    const times = seconds(200);
    times[50] = 49;
    times[120] = 119;
    expect(refusal(times)).toBe("none");
    times[130] = 129;
    expect(refusal(times)).toBe(
      "timeNotRising: The time does not rise from row to row. Check that the right column is taken for time, and that the file is in the order of the test.",
    );
  });
});

describe("columns that stand in their places", () => {
  it("stay as they are", () => {
    expect(oriented([10, 12, 14, 16], [500, 650, 800, 950])).toEqual({
      displacement: [10, 12, 14, 16],
      force: [500, 650, 800, 950],
      forceSignKnown: true,
      told: [],
    });
    // Of half of 1 N/mm, just as soft as a stop may be.
    expect(oriented([0, 20], [0, 10]).told).toEqual([]);
    expect(oriented([0, 20], [0, 9.9]).told).toEqual([swapped]);
  });

  it("are not exchanged for a stroke no stop has: 400 mm at most", () => {
    expect(oriented([0, 1000], [0, 400]).told).toEqual([swapped]);
    expect(oriented([0, 1000], [0, 401]).told).toEqual([]);
  });

  it("are not exchanged where the file's own numbers would be as soft the other way", () => {
    // Inches and pounds-force: 2 N are 0.45 lbf, as inches 11.4 mm; 20 mm are 0.79 in, as lbf 3.5 N.
    const imperial = { displacement: 25.4, force: 4.448 };
    expect(oriented([0, 40], [0, 4], imperial).told).toEqual([]);
    // 100 mm beside them are 3.9 in, as lbf 17.5 N.
    expect(oriented([0, 200], [0, 4], imperial).told).toEqual([swapped]);
    // Twice as long a unit: 20 mm and 5 N change places and stay 10 and 10.
    expect(oriented([0, 40], [0, 10], { displacement: 2, force: 1 }).told).toEqual([]);
    expect(oriented([0, 40], [0, 9.9], { displacement: 2, force: 1 }).told).toEqual([swapped]);
  });
});

describe("columns that were taken for each other", () => {
  it("change places", () => {
    expect(oriented([100, 300, 700], [1, 2, 4])).toEqual({
      displacement: [1, 2, 4],
      force: [100, 300, 700],
      forceSignKnown: true,
      told: [swapped],
    });
  });

  it("take each other's units as well", () => {
    // 0.25 in and 0.5 in, 100 lbf and 400 lbf, read the wrong way about.
    const found = oriented([100 * 25.4, 400 * 25.4], [0.25 * 4.448, 0.5 * 4.448], {
      displacement: 25.4,
      force: 4.448,
    });
    expect(found.told).toEqual([swapped]);
    for (const [place, inches] of [0.25, 0.5].entries()) {
      expect(found.displacement[place]).toBeCloseTo(25.4 * inches, 9);
    }
    for (const [place, pounds] of [100, 400].entries()) {
      expect(found.force[place]).toBeCloseTo(4.448 * pounds, 9);
    }
  });
});

describe("the signs of a cyclic test", () => {
  it("a force that is mostly negative is turned", () => {
    expect(oriented([1, 2, 3, 4], [-100, -200, -300, -400])).toEqual({
      displacement: [1, 2, 3, 4],
      force: [100, 200, 300, 400],
      forceSignKnown: true,
      told: [forceTurned],
    });
  });

  it("a force that goes as far down as up is not, if it rises with the displacement", () => {
    // The middle, −30, is three tenths of half the range, 100: just not mostly negative.
    expect(oriented([1, 2, 3, 4], [-130, -80, 20, 70]).told).toEqual([]);
    // −31 against 100.
    expect(oriented([1, 2, 3, 4], [-131, -80, 20, 69]).told).toContain(forceTurned);
  });

  it("a force about 0 that falls as the stop is pressed is turned", () => {
    expect(oriented([1, 2, 3, 4], [80, 20, -20, -80])).toEqual({
      displacement: [1, 2, 3, 4],
      force: [-80, -20, 20, 80],
      forceSignKnown: true,
      told: [forceTurned],
    });
  });

  it("a pushing force that falls means the displacement is counted the other way", () => {
    expect(oriented([1, 2, 3, 4], [800, 500, 300, 200])).toEqual({
      displacement: [-1, -2, -3, -4],
      force: [800, 500, 300, 200],
      forceSignKnown: true,
      told: [depthTurned],
    });
    expect(oriented([1, 2, 3, 4], [-800, -500, -300, -200]).told).toEqual([
      forceTurned,
      depthTurned,
    ]);
  });

  it("a force about 0 tells none by a rank correlation of 0.2 or less either way", () => {
    // Ranks 4 1 2 3 against 1 2 3 4: Σd² = 12, so 1 − 6·12/60 = −0.2; 3 2 1 4: Σd² = 8, so 0.2.
    for (const force of [
      [90, -90, -10, 10],
      [10, -10, -90, 90],
    ]) {
      expect(oriented([1, 2, 3, 4], force)).toEqual({
        displacement: [1, 2, 3, 4],
        force,
        forceSignKnown: false,
        told: [],
      });
    }
    // Ranks 1 4 2 3: Σd² = 6, so 0.4.
    expect(oriented([1, 2, 3, 4], [-90, 90, -10, 10]).forceSignKnown).toBe(true);
    // Ranks 4 1 3 2: Σd² = 14, so −0.4.
    expect(oriented([1, 2, 3, 4], [90, -90, 10, -10])).toMatchObject({
      forceSignKnown: true,
      told: [forceTurned],
    });
  });

  it("a force that pushes tells its own sign, whatever it has to do with the displacement", () => {
    expect(oriented([1, 2, 3, 4], [290, 110, 190, 210])).toMatchObject({
      forceSignKnown: true,
      told: [],
    });
  });

  it("a displacement that never changes is refused", () => {
    const outcome = orientCycles(columns([15, 15, 15], [1, 2, 3]));
    expect(outcome.ok ? "" : inModelUnits(outcome.fault.sentence)).toBe(
      "The displacement does not change in this file. Check that the right columns are chosen.",
    );
  });
});

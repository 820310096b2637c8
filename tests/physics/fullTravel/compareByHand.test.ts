import { describe, expect, it, vi } from "vitest";
import type {
  Corner,
  Fitment,
  FullTravelCheck,
  FullTravelCorner,
  HardLimit,
  Layout,
  Reading,
} from "../../../src/physics/fitment.ts";
import {
  type ComparedCorner,
  compareFullTravel,
} from "../../../src/physics/fullTravel/compareFullTravel.ts";
import { contactModel } from "../../../src/physics/fullTravel/contactModel.ts";
import { touchedParts } from "../../../src/physics/fullTravel/fullTravelCheck.ts";
import { handTravels } from "../../../src/physics/fullTravel/handTravel.ts";
import { unwrapped } from "../demoFitments.ts";
import { refusal } from "../refusal.ts";
import { exact, tyreLimit, uprightStrut } from "../staticFitments.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

/** A reading whose standard uncertainty is u: its rectangular ± is u·√3. */
const doubtful = (value: number, u: number): Reading => ({
  values: [value],
  tol: u * Math.sqrt(3),
});

/** An upright strut, so that wheel travel and closing are the same; usable compression 30 mm. */
const strut = (gap: Reading, ...limits: readonly HardLimit[]): Fitment =>
  uprightStrut({ gap, limits });

function compared(
  fitment: Fitment,
  contacts: FullTravelCorner["contacts"],
  atRide?: Reading,
): ComparedCorner {
  const check: FullTravelCheck = {
    measure: atRide === undefined ? "wheelTravel" : "hubToArch",
    movement: "both",
    corners: [{ side: "left", contacts, ...(atRide !== undefined && { atRide }) }],
  };
  const [corner] = unwrapped(compareFullTravel(fitment, check));
  if (corner === undefined) throw new Error("nothing compared");
  return corner;
}

const contactOf = (corner: ComparedCorner, part: string) => {
  const found = corner.contacts.find((each) => each.part === part);
  if (found === undefined) throw new Error(`no ${part}`);
  return found;
};

describe("a contact as computed, with its doubt", () => {
  it("has ± 1.96 u, and differs by ± 1.96·√(u² + u²) of both", () => {
    // The gap's u is 1.5, the hand's 2: together 2.5.
    const corner = compared(strut(doubtful(40, 1.5)), { stop: doubtful(46, 2) });
    const { computed, measuredMm, measuredHalfMm } = contactOf(corner, "stop");
    expect(measuredMm).toBe(46);
    expect(measuredHalfMm).toBeCloseTo(1.96 * 2, 9);
    expect(computed?.travelMm).toBeCloseTo(40, 9);
    expect(computed?.interval[0]).toBeCloseTo(40 - 1.96 * 1.5, 6);
    expect(computed?.interval[1]).toBeCloseTo(40 + 1.96 * 1.5, 6);
    expect(computed?.differenceMm).toBeCloseTo(6, 9);
    expect(computed?.doubtMm).toBeCloseTo(1.96 * 2.5, 6);
    expect(computed?.normalisedError).toBeCloseTo(6 / (1.96 * 2.5), 6);
    expect(computed?.agrees).toBe(false);
  });

  it("is never told to better than 0.196 mm, and agrees up to that very difference", () => {
    const of = (found: number) =>
      contactOf(compared(strut(exact(0)), { stop: exact(found) }), "stop").computed;
    expect(of(0.196)?.doubtMm).toBeCloseTo(0.196, 12);
    expect(of(0.196)?.agrees).toBe(true);
    expect(of(0.197)?.agrees).toBe(false);
  });
});

describe("what is left after the stop is fully pressed", () => {
  // Full stop 40 + 30 with u 1; by hand u 0.75: ± 1.96·1.25 = 2.45.
  it.each([
    [73, "ok"],
    [72, "unsure"],
    [68, "unsure"],
    [67, "no"],
  ])("a tyre that touches at %s mm: %s", (found, state) => {
    const corner = compared(strut(doubtful(40, 1)), { tyre: doubtful(found, 0.75) });
    const left = contactOf(corner, "tyre").afterFullStop;
    expect(left?.leftMm).toBeCloseTo(found - 70, 9);
    expect(left?.halfMm).toBeCloseTo(2.45, 6);
    expect(left?.state).toBe(state);
  });

  it("cannot be told where both come at the very same travel, nor is that before the stop", () => {
    const corner = compared(strut(exact(40)), {
      stop: exact(40),
      tyre: exact(70),
      hose: exact(40),
    });
    expect(contactOf(corner, "tyre").afterFullStop).toEqual({
      leftMm: 0,
      halfMm: 0,
      state: "unsure",
    });
    expect(contactOf(corner, "hose").beforeStop).toBe(false);
    expect(contactOf(corner, "stop").beforeStop).toBe(false);
  });

  it("comes before the stop only where the stop was found by hand", () => {
    const corner = compared(strut(exact(40)), { tyre: exact(90), hose: exact(20) });
    expect(corner.contacts.map(({ beforeStop }) => beforeStop)).toEqual([false, false]);
    const met = compared(strut(exact(40)), { stop: exact(41), hose: exact(40.9) });
    expect(contactOf(met, "hose").beforeStop).toBe(true);
  });
});

describe("what is likeliest wrong on a strut, in closed form", () => {
  const uncertainty = { gap: 1, tyre: 1.5, stop: 0.5, hand: 0.8, ride: 2 };
  const fitment = strut(doubtful(40, uncertainty.gap), tyreLimit(doubtful(90, uncertainty.tyre)));
  const heights = {
    stop: doubtful(500 - 52, uncertainty.stop),
    tyre: doubtful(500 - 93, uncertainty.hand),
  };
  const corner = compared(fitment, heights, doubtful(500, uncertainty.ride));

  // Differences 52 − 40 and 93 − 90; each with its own doubt, and the height at ride in both.
  const shared = uncertainty.ride ** 2;
  const a = uncertainty.gap ** 2 + uncertainty.stop ** 2 + shared;
  const d = uncertainty.tyre ** 2 + uncertainty.hand ** 2 + shared;
  const determinant = a * d - shared ** 2;
  type Pair = readonly [number, number];
  const product = ([x, y]: Pair, [v, w]: Pair) =>
    (d * x * v - shared * (x * w + y * v) + a * y * w) / determinant;
  const differences: Pair = [12, 3];
  // Once wrong: ten times its u, 5 mm at least.
  const suspects: readonly (readonly [string, Pair, number])[] = [
    ["left.gap", [1, 0], 10 * uncertainty.gap],
    ["left.limits.0", [0, 1], 10 * uncertainty.tyre],
    ["fullTravel.left.atRide", [1, 1], 10 * uncertainty.ride],
    ["fullTravel.left.stop", [1, 0], 5],
    ["fullTravel.left.tyre", [0, 1], 10 * uncertainty.hand],
  ];
  const evidence = suspects.map(([, slopes, gross]) => {
    const q = product(slopes, slopes);
    const fit = product(slopes, differences) / q;
    const gain = gross ** 2 * q;
    return (fit ** 2 * q * gain) / (1 + gain) / 2 - Math.log(1 + gain) / 2;
  });
  const total = evidence.reduce((sum, each) => sum + Math.exp(each), 0);

  it.each(suspects.map(([id, slopes], index) => [id, slopes, index] as const))(
    "%s",
    (id, slopes, index) => {
      const found = corner.explanations.find((each) => each.id === id);
      expect(found?.change).toBeCloseTo(product(slopes, differences) / product(slopes, slopes), 5);
      expect(found?.share).toBeCloseTo(Math.exp(evidence[index] as number) / total, 6);
    },
  );

  it("is not touched by a contact that nothing in the check tells of", () => {
    const more = compared(fitment, { ...heights, hose: exact(420) }, doubtful(500, 2));
    expect(more.explanations).toEqual(corner.explanations);
  });

  it("weighs a contact without doubt as one of 0.1 mm", () => {
    const bare = strut(exact(40), tyreLimit(exact(90)));
    const certain = compared(bare, { stop: exact(40.3), tyre: exact(90) });
    const least = compared(bare, { stop: doubtful(40.3, 0.1), tyre: doubtful(90, 0.1) });
    expect(certain.explanations).toHaveLength(5);
    expect(certain.explanations.map(({ id }) => id)).toEqual(
      least.explanations.map(({ id }) => id),
    );
    certain.explanations.forEach(({ share }, index) => {
      expect(share).toBeCloseTo(least.explanations[index]?.share ?? Number.NaN, 9);
    });
  });
});

describe("a slip that explains what was found", () => {
  const explanationOf = (corner: ComparedCorner, id: string) =>
    corner.explanations.find((each) => each.id === id);

  it.each([
    [2, 50.8],
    [508, 20],
  ])("of the gap: %s mm was typed, %s mm is true", (typed, truth) => {
    const corner = compared(strut(doubtful(typed, 0.5)), { stop: doubtful(truth, 0.5) });
    expect(explanationOf(corner, "left.gap")).toMatchObject({ slip: "unit", explains: true });
    expect(explanationOf(corner, "left.gap")?.wouldBe).toBeCloseTo(truth, 1);
  });

  it.each([
    [2, 50.8],
    [508, 20],
  ])("of a travel found by hand: %s mm was typed, %s mm is true", (typed, truth) => {
    const corner = compared(strut(doubtful(truth, 0.5)), { stop: doubtful(typed, 0.5) });
    const found = explanationOf(corner, "fullTravel.left.stop");
    expect(found).toMatchObject({ slip: "unit", explains: true });
    expect(found?.wouldBe).toBeCloseTo(truth, 1);
  });

  it("of a height found by hand is told as that height: 18 in typed as 18 mm", () => {
    const height = 18 * 25.4;
    const corner = compared(
      strut(doubtful(500 - height, 0.5)),
      { stop: doubtful(18, 0.5) },
      exact(500),
    );
    const found = explanationOf(corner, "fullTravel.left.stop");
    expect(found).toMatchObject({ slip: "unit", explains: true });
    expect(found?.wouldBe).toBeCloseTo(height, 6);
  });

  it("is none where 25.4 does not fit, and none of where the travel starts", () => {
    const corner = compared(strut(doubtful(40, 0.5)), { stop: doubtful(52, 0.5) });
    expect(corner.explanations.map(({ slip }) => slip)).toEqual([null, null, null]);
    const height = compared(strut(doubtful(40, 0.5)), { stop: doubtful(448, 0.5) }, exact(500));
    expect(height.explanations.map(({ slip }) => slip)).toEqual([null, null, null]);
    // 12 mm too much travel is a height 12 mm too small.
    expect(explanationOf(height, "fullTravel.left.stop")?.wouldBe).toBeCloseTo(460, 6);
    expect(explanationOf(height, "fullTravel.left.atRide")?.wouldBe).toBeNull();
  });
});

describe("every part that can touch", () => {
  const heights = (contacts: FullTravelCorner["contacts"], atRide?: Reading) =>
    handTravels(
      { measure: "hubToArch", movement: "both", corners: [] },
      { side: "left", contacts, ...(atRide !== undefined && { atRide }) },
    );

  it("is taken, the stop first", () => {
    const parts = ["stop", "tyre", "damper", "spring", "metal", "hose", "other"] as const;
    expect(touchedParts).toEqual(parts);
    const contacts = Object.fromEntries(parts.map((part, index) => [part, exact(480 - index)]));
    expect(unwrapped(heights(contacts, exact(500))).travels).toEqual(
      parts.map((part, index) => ({
        part,
        readingMm: 480 - index,
        travelMm: 20 + index,
        ownUncertaintyMm: 0,
      })),
    );
  });

  it("asks for the heights it is computed from, in words", () => {
    expect(refusal(heights({ stop: exact(400) }))).toBe(
      "heightMissing (fullTravel.left.atRide): The height from hub to fender at ride, left, is missing. Measure it as the vehicle stands on its wheels.",
    );
    expect(refusal(heights({ hose: exact(501) }, exact(500)))).toBe(
      "heightNotLess (fullTravel.left.hose): The height where a hose, wire or line touches or pulls tight, left, is more than at ride: the wheel would have gone down. Re-measure both.",
    );
    expect(refusal(heights({ stop: exact(0) }, exact(500)))).toMatch(
      /^lengthNotPositive \(fullTravel\.left\.stop\)/,
    );
    // As high as at ride: the stop touches there already.
    expect(unwrapped(heights({ stop: exact(500) }, exact(500))).travels[0]?.travelMm).toBe(0);
  });

  it("shares no doubt of a height at ride where travels are read", () => {
    const read = handTravels(
      { measure: "wheelTravel", movement: "both", corners: [] },
      { side: "left", contacts: { stop: exact(40) }, atRide: doubtful(500, 2) },
    );
    expect(unwrapped(read).sharedUncertaintyMm).toBe(0);
  });
});

describe("the slope of a contact by a reading", () => {
  function slopeOf(layout: Layout, gap: Reading, id: string): number {
    const fitment = uprightStrut({ gap, limits: [], fitment: { layout } });
    const corner = fitment.corners[0] as Corner;
    const model = unwrapped(contactModel(fitment, corner, "both"));
    const row = model.readings.findIndex((reading) => reading.id === id);
    return model.sensitivities(["stop"])[row]?.[0] as number;
  }
  // A level arm, upright stop: z = b·s/a, within a hair of s = a.
  const level = (a: Reading): Layout => ({
    kind: "arm",
    wheelPerOuter: 1,
    readings: { pivotToStop: a, pivotToOuter: exact(300) },
  });

  it("is taken from −u to +u", () => {
    // z = g/cos β, β = 60° ± 2°.
    const leaning: Layout = { kind: "strut", readings: { stopLean: doubtful(60, 2) } };
    const z = (degrees: number) => 20 / Math.cos((degrees * Math.PI) / 180);
    expect(slopeOf(leaning, exact(20), "stopLean")).toBeCloseTo((z(62) - z(58)) / 4, 9);
    expect(slopeOf(leaning, exact(20), "left.gap")).toBeCloseTo(2, 6);
    const a = doubtful(100, 4);
    const wanted = (300 * 20) / 104 - (300 * 20) / 96;
    expect(slopeOf(level(a), exact(20), "pivotToStop")).toBeCloseTo(wanted / 8, 6);
  });

  it("is that of the one side that the layout reaches", () => {
    // The gap cannot be 97 + 4, the arm not 100 − 4, for the arm must be longer than the gap.
    expect(slopeOf(level(exact(100)), doubtful(97, 4), "left.gap")).toBeCloseTo(3, 6);
    const wanted = (300 * 97) / 104 - (300 * 97) / 100;
    expect(slopeOf(level(doubtful(100, 4)), exact(97), "pivotToStop")).toBeCloseTo(wanted / 4, 6);
  });
});

import fc from "fast-check";
import { inv, matrix, multiply } from "mathjs";
import { describe, expect, it, vi } from "vitest";
import type {
  Corner,
  Fitment,
  FullTravelCheck,
  FullTravelCorner,
  Reading,
} from "../../../src/physics/fitment.ts";
import {
  type ComparedCorner,
  compareFullTravel,
} from "../../../src/physics/fullTravel/compareFullTravel.ts";
import { contactModel } from "../../../src/physics/fullTravel/contactModel.ts";
import { handTravels } from "../../../src/physics/fullTravel/handTravel.ts";
import { normalisedError } from "../../../src/physics/fullTravel/normalisedError.ts";
import { SymmetricSystem } from "../../../src/physics/fullTravel/symmetricSystem.ts";
import type { Outcome } from "../../../src/physics/outcome.ts";

vi.mock("../../../src/physics/kinematics/modelDoubt.ts", () => import("../noModelDoubt.ts"));

const once = (value: number, tol: number): Reading => ({ values: [value], tol });

function got<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome.value;
}

const stop = {
  name: "Short firm",
  duty: "impact",
  freeHeight: once(60, 1),
  usableCompressionMm: 30,
  usableTolMm: 0,
  curve: [[30, 6000]],
  damping: null,
  testedAtSpeed: false,
} as const;

/** An arm whose limits lie at the wheel and at the stop, so that its lever ratio shows in several. */
function armFitment(change: { readonly [name: string]: number } = {}): Fitment {
  const value = (name: string, usual: number, tol: number) => once(change[name] ?? usual, tol);
  return {
    use: "daily",
    layout: {
      kind: "arm",
      wheelPerOuter: 1,
      readings: {
        pivotToStop: value("pivotToStop", 152, 2),
        pivotToOuter: value("pivotToOuter", 411, 2),
        armAngle: value("armAngle", 8, 0.5),
        stopLean: value("stopLean", 5, 1),
      },
    },
    corners: [
      {
        side: "left",
        gap: value("gap", 21, 1),
        limits: [
          { kind: "tyre", at: "wheel", reading: value("tyre", 168, 3) },
          { kind: "metal", at: "stop", reading: value("metal", 60, 2) },
          { kind: "damper", at: "stop", reading: value("damper", 45, 2) },
          { kind: "damper", at: "wheel", perWheel: 0.5, reading: value("damper2", 90, 2) },
        ],
      },
    ],
    stop,
  };
}

const allParts = ["stop", "tyre", "damper", "metal"] as const;

/** What a hand finds on the vehicle whose true readings these are. */
function foundOn(
  truth: Fitment,
  tol = 2,
  shift = 0,
  parts: readonly (typeof allParts)[number][] = allParts,
): FullTravelCheck {
  const [corner] = truth.corners;
  if (!corner) throw new Error("no corner");
  const model = got(contactModel(truth, corner, "both"));
  const travels = model.travels(parts);
  const contacts: { -readonly [Part in keyof FullTravelCorner["contacts"]]: Reading } = {};
  parts.forEach((part, index) => {
    contacts[part] = once((travels[index] ?? 0) + shift, tol);
  });
  return { measure: "wheelTravel", movement: "both", corners: [{ side: "left", contacts }] };
}

function compared(fitment: Fitment, check: FullTravelCheck): ComparedCorner {
  const [corner] = got(compareFullTravel(fitment, check));
  if (!corner) throw new Error("nothing compared");
  return corner;
}

describe("normalised error", () => {
  it("is the difference over the combined 95 % doubt", () => {
    // U = 0.3 and 0.4 mm at 95 %, u = U/1.96: √(0.3² + 0.4²) = 0.5.
    expect(normalisedError(5, 3 / 1.96, 4 / 1.96)).toBeCloseTo(1, 12);
    expect(normalisedError(-10, 3 / 1.96, 4 / 1.96)).toBeCloseTo(-2, 12);
  });

  it("stays a number where nothing is in doubt: no hand finds a travel to better than 0.1 mm", () => {
    expect(normalisedError(0.196, 0, 0)).toBeCloseTo(1, 12);
  });
});

describe("a symmetric system", () => {
  it("gives a·A⁻¹·b as mathjs does", () => {
    const numbers = (length: number) =>
      fc.array(fc.double({ min: -3, max: 3, noNaN: true }), {
        minLength: length,
        maxLength: length,
      });
    fc.assert(
      fc.property(numbers(9), numbers(3), numbers(3), (entries, a, b) => {
        const root = [entries.slice(0, 3), entries.slice(3, 6), entries.slice(6, 9)];
        const positive = [0, 1, 2].map((row) =>
          [0, 1, 2].map(
            (column) =>
              (row === column ? 1 : 0) +
              [0, 1, 2].reduce(
                (sum, k) => sum + (root[row]?.[k] ?? 0) * (root[column]?.[k] ?? 0),
                0,
              ),
          ),
        );
        const system = new SymmetricSystem(positive.map((row) => Float64Array.from(row)));
        const wanted = multiply(
          matrix(a),
          multiply(inv(matrix(positive)), matrix(b)),
        ) as unknown as number;
        expect(system.product(Float64Array.from(a), Float64Array.from(b))).toBeCloseTo(wanted, 8);
      }),
    );
  });

  it("stays finite where two contacts say the very same", () => {
    const same = Float64Array.of(4, 4);
    const system = new SymmetricSystem([same, same]);
    expect(Number.isFinite(system.product(Float64Array.of(1, 2), Float64Array.of(1, 2)))).toBe(
      true,
    );
  });
});

describe("travel by hand", () => {
  const corner = (contacts: FullTravelCorner["contacts"], atRide?: Reading): FullTravelCorner => ({
    side: "right",
    contacts,
    ...(atRide && { atRide }),
  });
  const check = (measure: FullTravelCheck["measure"]): FullTravelCheck => ({
    measure,
    movement: "both",
    corners: [],
  });

  it("is as read, or the height at ride less the height at the contact", () => {
    const read = got(
      handTravels(check("wheelTravel"), corner({ tyre: once(160, 3), stop: once(0, 1) })),
    );
    expect(read.travels.map(({ part, travelMm }) => [part, travelMm])).toEqual([
      ["stop", 0],
      ["tyre", 160],
    ]);
    expect(read.travels[1]?.ownUncertaintyMm).toBeCloseTo(Math.sqrt(3), 12);
    expect(read.sharedUncertaintyMm).toBe(0);
    const heights = got(
      handTravels(
        check("hubToArch"),
        corner({ stop: { values: [460, 462], tol: 0 } }, once(520, Math.sqrt(3))),
      ),
    );
    expect(heights.travels[0]?.travelMm).toBe(59);
    // s/√n of 460 and 462 is √2/√2 = 1.
    expect(heights.travels[0]?.ownUncertaintyMm).toBeCloseTo(1, 12);
    expect(heights.sharedUncertaintyMm).toBeCloseTo(1, 12);
  });

  it.each([
    ["heightMissing", "fullTravel.right.atRide", "hubToArch", corner({ stop: once(400, 1) })],
    [
      "heightNotLess",
      "fullTravel.right.stop",
      "hubToArch",
      corner({ stop: once(530, 1) }, once(520, 1)),
    ],
    ["lengthNotPositive", "fullTravel.right.atRide", "hubToArch", corner({}, once(0, 1))],
    ["gapNegative", "fullTravel.right.hose", "wheelTravel", corner({ hose: once(-4, 1) })],
    [
      "readingNotFinite",
      "fullTravel.right.hose",
      "wheelTravel",
      corner({ hose: once(Number.NaN, 1) }),
    ],
  ] as const)("%s names %s", (code, reading, measure, own) => {
    const outcome = handTravels(check(measure), own);
    expect(outcome).toMatchObject({ ok: false, fault: { code, reading } });
    expect(
      compareFullTravel(
        {
          ...armFitment(),
          corners: armFitment().corners.map((each) => ({ ...each, side: "right" })),
        },
        {
          measure,
          movement: "both",
          corners: [{ ...own, contacts: { tyre: once(1, 1), ...own.contacts } }],
        },
      ).ok,
    ).toBe(false);
  });
});

describe("the computed contacts", () => {
  it("are z(gap), the least limit of a kind and z(gap + usable), with their slopes", () => {
    const fitment: Fitment = {
      ...armFitment(),
      layout: { kind: "strut", readings: { stopLean: once(60, 1) } },
    };
    const [corner] = fitment.corners;
    if (!corner) throw new Error("no corner");
    const model = got(contactModel(fitment, corner, "both"));
    // s = z·cos 60° = z/2
    const travels = [...model.travels(["stop", "tyre", "metal", "damper", "hose", "fullStop"])];
    expect(travels.slice(0, 4).map((travel) => travel.toFixed(9))).toEqual([
      "42.000000000",
      "168.000000000",
      "120.000000000",
      "90.000000000",
    ]);
    expect(travels[4]).toBeNaN();
    expect(travels[5]).toBeCloseTo(102, 9);
    const ids = model.readings.map(({ id }) => id);
    expect(ids).not.toContain("stop.freeHeight");
    const slopes = model.sensitivities(["stop", "fullStop"]);
    expect(slopes[ids.indexOf("left.gap")]?.[0]).toBeCloseTo(2, 6);
    // dz/dβ = g·sin β/cos²β per radian.
    const wanted = ((21 * Math.sin(Math.PI / 3)) / 0.25) * (Math.PI / 180);
    expect(slopes[ids.indexOf("stopLean")]?.[0]).toBeCloseTo(wanted, 1);
  });

  it("are those of one wheel of a beam axle raised alone: s = z·(T + S)/2T", () => {
    const fitment: Fitment = {
      ...armFitment(),
      layout: { kind: "axle", readings: { track: once(1600, 5), stopSpacing: once(800, 5) } },
    };
    const [corner] = fitment.corners;
    if (!corner) throw new Error("no corner");
    expect(got(contactModel(fitment, corner, "both")).travels(["stop"])[0]).toBeCloseTo(21, 9);
    expect(got(contactModel(fitment, corner, "one")).travels(["stop"])[0]).toBeCloseTo(28, 9);
  });

  it("have slopes of one side near the end of what the layout reaches, and 0 beyond it", () => {
    const edge = armFitment({ stopLean: 5, pivotToOuter: 411, metal: 172.5 });
    const [corner] = edge.corners;
    if (!corner) throw new Error("no corner");
    const model = got(contactModel(edge, corner, "both"));
    for (const row of model.sensitivities(["metal", "stop"])) {
      expect([...row].every(Number.isFinite)).toBe(true);
    }
    const lost = model.travels(["stop"], { id: "armAngle", value: 90 });
    expect(lost[0]).toBeNaN();
  });
});

describe("hand and computed travel", () => {
  it("agree where the readings are true", () => {
    const corner = compared(armFitment(), foundOn(armFitment()));
    expect(corner.agrees).toBe(true);
    expect(corner.explanations).toEqual([]);
    for (const { computed } of corner.contacts) {
      expect(Math.abs(computed?.differenceMm ?? 1)).toBeLessThan(1e-9);
      expect(computed?.interval[0]).toBeLessThan(computed?.travelMm ?? 0);
    }
  });

  it("differ by more than their doubt seldom while every reading is within its own ±", () => {
    let state = 20_080_101;
    const next = () => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const within = (mean: number, tol: number) => mean + tol * (2 * next() - 1);
    let wrong = 0;
    const trials = 1500;
    for (let trial = 0; trial < trials; trial++) {
      const truth = armFitment({
        pivotToStop: within(152, 2),
        pivotToOuter: within(411, 2),
        armAngle: within(8, 0.5),
        stopLean: within(5, 1),
        gap: within(21, 1),
      });
      const check = foundOn(truth, 2, within(0, 2), ["stop"]);
      if (compared(armFitment(), check).agrees === false) wrong++;
    }
    // Sums of rectangular numbers reach beyond 1.96 u in somewhat less than 5 %.
    expect(wrong / trials).toBeLessThan(0.06);
    expect(wrong).toBeGreaterThan(0);
  });

  it.each([
    ["pivotToStop", 132],
    ["pivotToStop", 170],
    ["pivotToOuter", 380],
    ["left.gap", 32],
    ["left.limits.0", 190],
    ["left.limits.1", 76],
  ])("name the reading that was wrong: %s is %s in truth", (id, truth) => {
    const name = { "left.gap": "gap", "left.limits.0": "tyre", "left.limits.1": "metal" }[id] ?? id;
    const corner = compared(armFitment(), foundOn(armFitment({ [name]: truth }), 1));
    expect(corner.agrees).toBe(false);
    // What only one contact shows may as well be that contact's own tape, and a joint farther out the
    // wheel's travel per travel of the joint: they stand together.
    const likely = corner.explanations.slice(0, 3).find((each) => each.id === id);
    expect(likely?.explains).toBe(true);
    expect(likely?.wouldBe).toBeCloseTo(truth, -1);
    expect(Math.abs((likely?.wouldBe ?? 0) - truth)).toBeLessThan(4);
    const total = corner.explanations.reduce((sum, { share }) => sum + share, 0);
    expect(total).toBeCloseTo(1, 9);
  });

  it("name the start where every contact comes later by the same", () => {
    const corner = compared(armFitment(), foundOn(armFitment(), 1, 14));
    expect(corner.explanations[0]).toMatchObject({
      id: "fullTravel.left.atRide",
      explains: true,
      wouldBe: null,
    });
    expect(corner.explanations[0]?.change).toBeCloseTo(14, 0);
  });

  it("see inches taken for millimetres", () => {
    // The gap was typed as 21 mm where 21/25.4 in… and the other way round: 2 in typed as 2 mm.
    const typed = armFitment({ gap: 2 });
    const corner = compared(typed, foundOn(armFitment({ gap: 50.8 }), 1));
    const gap = corner.explanations.find(({ id }) => id === "left.gap");
    expect(gap?.slip).toBe("unit");
    expect(gap?.wouldBe).toBeCloseTo(50.8, 0);
    expect(corner.explanations.slice(0, 2)).toContain(gap);
  });

  it("see a sign turned round", () => {
    const typed = armFitment({ stopLean: -30, armAngle: 20 });
    const truth = armFitment({ stopLean: 30, armAngle: 20 });
    const corner = compared(typed, foundOn(truth, 1));
    const lean = corner.explanations.find(({ id }) => id === "stopLean");
    expect(lean?.slip).toBe("sign");
    expect(lean?.explains).toBe(true);
  });

  it("say of a travel typed in the wrong unit what it would be", () => {
    const check = foundOn(armFitment(), 1);
    const [own] = check.corners;
    const travel = own?.contacts.tyre?.values[0] ?? 0;
    const slipped: FullTravelCheck = {
      ...check,
      corners: [{ side: "left", contacts: { ...own?.contacts, tyre: once(travel / 25.4, 1) } }],
    };
    const tyre = compared(armFitment(), slipped).explanations.find(
      ({ id }) => id === "fullTravel.left.tyre",
    );
    expect(tyre?.slip).toBe("unit");
    expect(tyre?.wouldBe).toBeCloseTo(travel, 6);
  });

  it("share the height at ride between contacts where heights are measured", () => {
    const check = foundOn(armFitment(), 1, 9);
    const [own] = check.corners;
    if (!own) throw new Error("no side");
    const heights: { -readonly [Part in keyof typeof own.contacts]: Reading } = {};
    for (const part of allParts)
      heights[part] = once(520 - (own.contacts[part]?.values[0] ?? 0), 1);
    const corner = compared(armFitment(), {
      measure: "hubToArch",
      movement: "both",
      corners: [{ side: "left", atRide: once(520, 2), contacts: heights }],
    });
    expect(corner.agrees).toBe(false);
    expect(corner.explanations[0]?.id).toBe("fullTravel.left.atRide");
    const plain = compared(armFitment(), check);
    expect(corner.contacts[0]?.measuredHalfMm).toBeGreaterThan(
      plain.contacts[0]?.measuredHalfMm ?? 9,
    );
  });

  it("tell what touched before the stop had done its work, known to the check or not", () => {
    const fitment = armFitment();
    const [corner] = fitment.corners;
    if (!corner) throw new Error("no corner");
    const model = got(contactModel(fitment, corner, "both"));
    const [contact = 0, full = 0] = model.travels(["stop", "fullStop"]);
    const found = compared(fitment, {
      measure: "wheelTravel",
      movement: "both",
      corners: [
        {
          side: "left",
          contacts: {
            stop: once(contact, 1),
            hose: once(contact - 20, 1),
            other: once(full - 1, 2),
            tyre: once(full + 60, 2),
          },
        },
      ],
    });
    const of = (part: string) => found.contacts.find((each) => each.part === part);
    expect(of("hose")).toMatchObject({
      computed: null,
      beforeStop: true,
      afterFullStop: { state: "no" },
    });
    expect(of("other")).toMatchObject({ beforeStop: false, afterFullStop: { state: "unsure" } });
    expect(of("tyre")?.afterFullStop?.state).toBe("ok");
    expect(of("stop")?.afterFullStop).toBeNull();
  });

  it("leave out a side without a contact, or that the check does not have", () => {
    const check = foundOn(armFitment());
    const empty = { ...check, corners: [{ side: "left", contacts: {} }] } as const;
    expect(got(compareFullTravel(armFitment(), empty))).toEqual([]);
    const other = {
      ...check,
      corners: [{ side: "right", contacts: { tyre: once(1, 1) } }],
    } as const;
    expect(got(compareFullTravel(armFitment(), other))).toEqual([]);
  });

  it("cannot say whether they agree where nothing found is in the check, or within reach", () => {
    const hose = compared(armFitment(), {
      measure: "wheelTravel",
      movement: "both",
      corners: [{ side: "left", contacts: { hose: once(90, 2) } }],
    });
    expect(hose.agrees).toBeNull();
    expect(hose.contacts[0]?.beforeStop).toBe(false);
    const beyond = compared(armFitment({ metal: 900 }), {
      measure: "wheelTravel",
      movement: "both",
      corners: [{ side: "left", contacts: { metal: once(90, 2) } }],
    });
    expect(beyond.contacts[0]?.computed).toBeNull();
  });

  it("pass on a reading that can't be computed with", () => {
    expect(compareFullTravel(armFitment({ pivotToStop: -1 }), foundOn(armFitment()))).toMatchObject(
      {
        ok: false,
        fault: { reading: "pivotToStop" },
      },
    );
  });

  it("never give anything but numbers", () => {
    const length = fc.double({ min: 1, max: 400, noNaN: true });
    fc.assert(
      fc.property(length, length, length, length, length, (a, gap, metal, found, touched) => {
        const outcome = compareFullTravel(armFitment({ pivotToStop: a, gap, metal }), {
          measure: "wheelTravel",
          movement: "both",
          corners: [{ side: "left", contacts: { stop: once(found, 1), metal: once(touched, 0) } }],
        });
        const text = JSON.stringify(outcome, (_, value: unknown) => {
          if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`${value}`);
          return value;
        });
        expect(text.length).toBeGreaterThan(10);
      }),
      { numRuns: 400 },
    );
  });
});

describe("a contact far off what is computed", () => {
  it("is a wrong input even where the doubt is wide, and the wheel's travel per joint is a suspect", () => {
    const wide = armFitment({ gap: 21 });
    const { wheelPerOuter: _, ...layout } = wide.layout;
    const fitment: Fitment = {
      ...wide,
      layout: layout as Fitment["layout"],
      corners: wide.corners.map((corner) => ({ ...corner, gap: once(21, 12) })),
    };
    const [computed = 0] = got(contactModel(fitment, fitment.corners[0] as Corner, "both")).travels(
      ["stop"],
    );
    const at = (factor: number) =>
      compared(fitment, {
        measure: "wheelTravel",
        movement: "both",
        corners: [{ side: "left", contacts: { stop: once(factor * computed, 1) } }],
      });
    expect(at(1.17).agrees).toBe(true);
    const off = at(1.2);
    expect(off.agrees).toBe(false);
    expect(off.explanations.map(({ id }) => id)).toContain("wheelPerOuter");
    expect(off.explanations.map(({ id }) => id)).not.toContain("linkage");
  });
});

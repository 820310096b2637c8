import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assessFitment, assessStatic } from "../../../src/physics/assess.ts";
import { travelBudget } from "../../../src/physics/budget/travelBudget.ts";
import type { Layout, Reading } from "../../../src/physics/fitment.ts";
import { layoutAtHeight } from "../../../src/physics/kinematics/layoutAtHeight.ts";
import { rulesOf } from "../../../src/physics/road/useRules.ts";
import type { CheckRecord, TypedReading } from "../../../src/records/check/checkRecord.ts";
import { fitmentOf } from "../../../src/records/check/fitmentOf.ts";
import { readCheckValue } from "../../../src/records/check/readCheck.ts";
import { usualPayloads } from "../../../src/records/entry/payloadWords.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { platformOf, recordStop, stopOf } from "../../../src/records/pack/pack.ts";
import {
  type QuickCheckAnswer,
  quickCheckAnswer,
} from "../../../src/records/quickCheck/quickCheckAnswer.ts";
import type { QuickCheckReadings } from "../../../src/records/quickCheck/quickCheckQuestion.ts";
import {
  type QuickCheckRecord,
  quickCheckRecord,
} from "../../../src/records/quickCheck/quickCheckRecord.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { Noise } from "../../physics/stopTests/generatedTests.ts";
import { faultCode, given } from "../../physics/stopTests/outcomes.ts";

const id = "6d0f6c1e-8a1f-4a53-9d3b-0c5b1f3d9a10";
const createdAt = "2024-05-01T10:00:00.000Z";
const options = { samples: 10_000 };

function reading(value: number, tol = 2): TypedReading {
  return { values: [value], tol };
}

function ask(
  readings: QuickCheckReadings,
  platformId = "marlow-utility-front",
): {
  readonly made: QuickCheckRecord;
  readonly record: CheckRecord;
  readonly answer: QuickCheckAnswer;
} {
  const made = given(
    quickCheckRecord(demoPack, { platformId, use: "daily", readings, id, createdAt }, inModelUnits),
  );
  const assessed = given(assessStatic(fitmentOf(made.record), options));
  return { made, record: made.record, answer: quickCheckAnswer(made, assessed) };
}

const raised: QuickCheckReadings = {
  rideHeight: reading(560),
  gap: reading(44, 1),
  stopHeight: reading(60, 1),
  clearance: { kind: "tyre", reading: reading(150) },
  payload: "empty",
};

describe("the record", () => {
  test("is an ordinary check: it reads, and says what it took from the pack", () => {
    const { record, answer } = ask(raised);
    expect(given(readCheckValue(record))).toEqual(record);
    expect(record.author.role).toBe("customer");
    expect(record.vehicle).toMatchObject({ platformId: "marlow-utility-front", liftMm: 40 });
    expect(record.corners[0]?.gap).toEqual(raised.gap);
    expect(answer.assumed.length).toBeGreaterThan(2);
    expect(record.notes?.split("\n").length).toBe(answer.assumed.length);
  });

  test("as usual and unmeasured: the platform's own readings, untouched", () => {
    const { record } = ask({ payload: "empty" });
    const platform = platformOf(demoPack, "marlow-utility-front");
    const layout = platform?.layout.readings as { readonly [name: string]: Reading };
    for (const [name, measured] of Object.entries(record.layout.readings)) {
      expect((measured as Reading).values[0]).toBeCloseTo(layout[name]?.values[0] ?? 0, 9);
    }
    expect(record.corners[0]?.gap?.values[0]).toBeCloseTo(platform?.gap?.values[0] ?? 0, 9);
    const usual = recordStop(stopOf(demoPack, platform?.usualStop ?? null) as never);
    expect(record.stop).toEqual({ ...usual, freeHeight: { ...usual.freeHeight, source: "pack" } });
  });

  test("what the pack supplies is marked as the pack's, and what was read is not", () => {
    const { record } = ask({ ...raised, clearance: { kind: "tyre", reading: reading(120) } });
    const sources = Object.values(record.layout.readings).map(({ source }) => source);
    expect(new Set(sources)).toEqual(new Set(["pack"]));
    const [corner] = record.corners;
    expect(corner?.gap?.source).toBeUndefined();
    expect(corner?.cornerMassKg?.source).toBe("pack");
    expect(corner?.limits.map(({ reading: { source } }) => source)[0]).toBeUndefined();
  });

  test("another stop's height keeps nothing that only a test at speed of the usual one found", () => {
    const tested = {
      ...demoPack,
      stops: demoPack.stops.map((stop) => ({
        ...stop,
        testedAtSpeed: true,
        damping: null,
        restLoss: 0.05,
        branches: [{ tauS: 0.01, share: 0.2 }],
        usableTolMm: 2,
      })),
    };
    const platformId = "marlow-utility-front";
    const readings = { ...raised, stopHeight: reading(75, 1) };
    const made = given(
      quickCheckRecord(tested, { platformId, use: "daily", readings, id, createdAt }, inModelUnits),
    );
    const read = given(readCheckValue(made.record));
    expect(read.stop.testedAtSpeed).toBe(false);
    expect(read.stop).not.toHaveProperty("restLoss");
    expect(read.stop).not.toHaveProperty("branches");
    expect(read.stop.usableTolMm).toBeCloseTo(1.25 * 2, 9);
  });

  test("another stop's height: one of the same build and class, without damping", () => {
    const { record } = ask({ ...raised, stopHeight: reading(75, 1) }, "marlow-utility-front");
    const usual = stopOf(demoPack, "tall-progressive");
    expect(record.stop.usableCompressionMm).toBeCloseTo(
      1.25 * (usual?.usableCompressionMm ?? 0),
      9,
    );
    expect(record.stop.damping).toBeNull();
    const [depth, force] = record.stop.curve[0] ?? [0, 0];
    const [usualDepth, usualForce] = usual?.curve[0] ?? [0, 0];
    expect(force / depth).toBeCloseTo(usualForce / usualDepth, 9);
  });

  test("a trailer makes the use towing, and a payload word its kilograms", () => {
    const { record } = ask({ ...raised, payload: "trailer" }, "marlow-utility-rear");
    expect(record.vehicle.use).toBe("towing");
    expect(record.ride?.payloadPerCornerKg).toBe(70);
    expect(record.ride?.estimated?.payloadPerCornerKg).toContain("common practice");
    expect(record.ride?.estimated?.wheelRateNPerMm).toMatch(/^parts library, Marlow/);
  });

  test("readings that cannot be are refused in a sentence", () => {
    const question = { platformId: "marlow-utility-front", use: "daily", id, createdAt } as const;
    const asked = (readings: QuickCheckReadings, platformId = question.platformId as string) =>
      faultCode(quickCheckRecord(demoPack, { ...question, platformId, readings }, inModelUnits));
    expect(asked({ payload: "empty" }, "unheard-of")).toBe("platformNotKnown");
    expect(asked({ payload: "empty", rideHeight: reading(2000) })).toBe("heightOutOfReach");
    expect(asked({ payload: "empty", stopHeight: reading(120) })).toBe("gapNotBelievable");
  });
});

describe("the answer", () => {
  test("yes where the tire touches long before the stop is pressed all the way", () => {
    const { answer } = ask({ ...raised, clearance: { kind: "tyre", reading: reading(120) } });
    expect(answer.answer).toBe("yes");
    expect(answer.tallerMm).toBeGreaterThan(0);
    expect(answer.rangeMm?.[0]).toBeGreaterThan(0);
    expect(answer.settle).toBeNull();
    expect(answer.cautionsFor).toBe("raised");
  });

  test("no where it has", () => {
    const { answer } = ask({
      ...raised,
      rideHeight: reading(520),
      gap: reading(22, 1),
      clearance: { kind: "tyre", reading: reading(190) },
    });
    expect(answer.answer).toBe("no");
    expect(answer.tallerMm).toBeLessThan(0);
    expect(answer.cautionsFor).toBe("level");
  });

  test("can't tell in between, and names the reading that would settle it", () => {
    const { answer } = ask({
      ...raised,
      gap: reading(30, 6),
      clearance: { kind: "tyre", reading: reading(178, 15) },
    });
    expect(answer.answer).toBe("cantTell");
    expect(answer.settle?.reading).toMatch(/^left\.|^stop\./);
    expect(answer.rangeMm?.[0]).toBeLessThan(answer.rangeMm?.[1] ?? 0);
  });

  test("a stop that is never met is a yes, not an oddity", () => {
    const { answer } = ask({
      ...raised,
      gap: reading(80),
      clearance: { kind: "tyre", reading: reading(120) },
    });
    expect(answer.answer).toBe("yes");
    expect(inModelUnits(answer.why[0] ?? [])).toContain("never met");
  });

  test("inches taken for millimetres are refused, not answered", () => {
    const readings = { ...raised, rideHeight: reading(520), gap: reading(0.87, 0.1) };
    const platformId = "marlow-utility-front";
    const made = quickCheckRecord(
      demoPack,
      { platformId, use: "daily", readings, id, createdAt },
      inModelUnits,
    );
    expect(faultCode(made)).toBe("notBelieved");
    expect(made.ok ? null : made.fault.reading).toBe("left.gap");
  });

  test("inches typed as mm are asked about where the other readings say otherwise, on a sagged vehicle not", () => {
    const { answer } = ask({ ...raised, rideHeight: reading(520), gap: reading(1.75, 0.5) });
    expect(answer).toMatchObject({ answer: "cantTell", tallerMm: null, spacerMm: null });
    expect(answer.settle?.reading).toBe("left.gap");
    expect(inModelUnits(answer.why[0] ?? [])).toMatch(/should be about \d\d\.\d mm, not 1\.\d mm/);
    const tyre = ask({ ...raised, clearance: { kind: "tyre", reading: reading(6.6, 0.5) } });
    expect(tyre.answer.settle?.reading).toBe("left.limits.0");
    // It has sagged by as much as its gap has closed.
    const sagged = ask({ ...raised, rideHeight: reading(475), gap: reading(1.9, 0.5) });
    expect(sagged.made.doubted).toBeNull();
  });

  test("mm typed as inches give no number at all", () => {
    const readings = { ...raised, gap: reading(45 * 25.4) };
    const platformId = "marlow-utility-front";
    const made = quickCheckRecord(
      demoPack,
      { platformId, use: "daily", readings, id, createdAt },
      inModelUnits,
    );
    expect(faultCode(made)).toBe("notBelieved");
    expect(made.ok ? "" : inModelUnits(made.fault.sentence)).not.toMatch(/\d/);
  });

  test("“No, not taller” after a payload word alone: nothing measured gives no answer, whatever it carries", () => {
    for (const payload of ["empty", "tools", "full"] as const) {
      const { answer } = ask({ payload });
      expect(answer).toMatchObject({ answer: "cantTell", tallerMm: null, spacerMm: null });
      expect(answer.measured).toEqual([]);
      expect(answer.settle?.reading).toBe("left.gap");
      expect(inModelUnits(answer.why[0] ?? [])).toContain("Nothing was measured");
    }
  });

  test("a raised vehicle whose tire clearance was not measured is can't tell, with that reading named", () => {
    const { answer } = ask({ rideHeight: reading(560), gap: reading(44, 1), payload: "empty" });
    expect(answer).toMatchObject({ answer: "cantTell", tallerMm: null });
    expect(answer.settle?.reading).toMatch(/^left\.limits\.\d$/);
    expect(inModelUnits(answer.why[0] ?? [])).toContain("over the tire");
  });

  test("ground to fender is caught, and no number comes of it", () => {
    const question = { platformId: "marlow-utility-front", use: "daily", id, createdAt } as const;
    const readings = { ...raised, rideHeight: reading(880) };
    const made = quickCheckRecord(demoPack, { ...question, readings }, inModelUnits);
    expect(faultCode(made)).toBe("rideHeightNotBelievable");
    const told = made.ok ? "" : inModelUnits(made.fault.sentence);
    expect(told).toContain("ground to fender");
    // Of what is not believed no number is told: only what is usual.
    expect(told.match(/\d+/g)).toEqual(["520", "0"]);
  });

  test("a ride height raised with an unchanged gap is a body lift or a slip: can't tell", () => {
    const usual = platformOf(demoPack, "marlow-utility-front")?.gap?.values[0] ?? 0;
    const { answer } = ask({ ...raised, gap: reading(usual, 1) });
    expect(answer).toMatchObject({ answer: "cantTell", tallerMm: null });
    expect(answer.settle?.reading).toBe("left.gap");
    expect(inModelUnits(answer.why[0] ?? [])).toContain("off its frame");
  });

  test("told as how much it is short, the range has the number's sign", () => {
    const { answer } = ask({ ...raised, clearance: { kind: "tyre", reading: reading(150) } });
    const told = inModelUnits(answer.why[0] ?? []);
    const [by = 0, least = 0, greatest = 0] = (told.match(/-?\d+\.\d(?= mm)/g) ?? []).map(Number);
    expect(least).toBeGreaterThan(0);
    expect(least).toBeLessThan(by);
    expect(greatest).toBeGreaterThan(by);
  });

  test("“taller by 2.22 in” on a gap of 1 1/4 in: what presses the stop at rest is no height that fits", () => {
    const { record, made } = ask({
      ...raised,
      rideHeight: reading(530),
      gap: reading(1.25 * 25.4, 1),
      stopHeight: reading(42, 1),
      clearance: { kind: "tyre", reading: reading(60) },
    });
    const fitment = fitmentOf(record);
    for (const known of [fitment, { ...fitment, ride: {} }]) {
      const answer = quickCheckAnswer(made, given(assessStatic(known, options)));
      expect(answer.answer).toBe("yes");
      expect(Math.min(answer.tallerMm ?? 0, answer.spacerMm ?? 0)).toBeGreaterThan(1.25 * 25.4);
      expect(answer.heightFits).toBe(false);
      const told = answer.why.map(inModelUnits).join(" ");
      expect(told).toContain("so height alone does not fix it");
      const upTo = /(?:more than|up to) (\d+\.\d) mm/.exec(told)?.[1] ?? "0";
      expect(Number(upTo)).toBeLessThanOrEqual(1.25 * 25.4);
    }
  });

  test("“shorter by up to 2.12 in” for a stop 2.05 in high: never shorter than one can be made", () => {
    const height = 2.05 * 25.4;
    const { record, made } = ask({
      ...raised,
      rideHeight: reading(515),
      gap: reading(3, 1),
      stopHeight: reading(height, 1),
      clearance: { kind: "tyre", reading: reading(60) },
      payload: "full",
    });
    const assessed = given(assessStatic(fitmentOf(record), options));
    for (const mostExtraHeightMm of [-11.4, -35, -53.8]) {
      const corners = assessed.corners.map((corner) => ({ ...corner, mostExtraHeightMm }));
      const answer = quickCheckAnswer(made, { ...assessed, corners });
      const told = answer.why.map(inModelUnits).join(" ");
      expect(told).toContain("touches too often on the road already");
      const by = Number(/shorter by (\d+\.\d) mm/.exec(told)?.[1] ?? 0);
      expect(by > 0).toBe(-mostExtraHeightMm <= height - 15);
      expect(by).toBeLessThanOrEqual(height - 15);
    }
  });

  test("the same from the complete assessment as from the static one", () => {
    const { made, record, answer } = ask(raised);
    const complete = given(assessFitment(fitmentOf(record), options));
    expect(quickCheckAnswer(made, complete)).toEqual(answer);
  });
});

/** A vehicle of the platform, drawn within its tolerances, and what a tape reads on it. */
describe("vehicles drawn from the platform, measured with a tape: the truth is known", () => {
  test("the 95 % range holds the true height, and yes and no are right", () => {
    const noise = new Noise(17);
    const draw = (value: Reading | undefined) =>
      (value?.values[0] ?? 0) + (2 * noise.uniform() - 1) * (value?.tol ?? 0);
    const platform = platformOf(demoPack, "brant-pickup-front");
    const stop = recordStop(stopOf(demoPack, platform?.usualStop ?? null) as never);
    if (platform === null) throw new Error("no platform");
    let held = 0;
    let wrong = 0;
    let sure = 0;
    const vehicles = 150;
    for (let vehicle = 0; vehicle < vehicles; vehicle++) {
      const trueReadings = Object.fromEntries(
        Object.entries(platform.layout.readings).map(([name, value]) => [
          name,
          { values: [draw(value as Reading)], tol: 0 },
        ]),
      );
      const usual = { ...platform.layout, readings: trueReadings } as unknown as Layout;
      const raisedMm = 60 * noise.uniform();
      const { layout, openedMm } = given(layoutAtHeight(usual, raisedMm, 0));
      const gap = draw(platform.gap) + openedMm;
      const limits = platform.limits.map((limit) => ({
        ...limit,
        reading: { values: [draw(limit.reading) + (limit.perWheel ?? 1) * raisedMm], tol: 0 },
      }));
      const corner = { side: "left" as const, gap: { values: [gap], tol: 0 }, limits };
      const vehicleItself = { use: "daily" as const, layout, corners: [corner], stop };
      const truth = given(travelBudget(vehicleItself, corner, rulesOf("daily").reserveMm)).budget;
      const tyre = limits.find(({ kind }) => kind === "tyre")?.reading.values[0] ?? 0;
      const { answer } = ask(
        {
          rideHeight: reading(draw(platform.rideHeight) + raisedMm, 2),
          gap: reading(draw({ values: [gap], tol: 1 }), 1),
          clearance: { kind: "tyre", reading: reading(draw({ values: [tyre], tol: 2 }), 2) },
          payload: "empty",
        },
        platform.id,
      );
      const wanted = truth.limit?.tallerMm ?? 0;
      const [least, greatest] = answer.rangeMm ?? [0, 0];
      if (least <= wanted && wanted <= greatest) held++;
      if (answer.answer !== "cantTell") {
        sure++;
        if ((answer.answer === "yes") !== wanted > 0) wrong++;
      }
    }
    expect(held / vehicles).toBeGreaterThan(0.9);
    expect(sure).toBeGreaterThan(vehicles / 3);
    expect(wrong / sure).toBeLessThan(0.05);
  });
});

test("what may be short and touches too often loaded is told in four sentences", () => {
  const { answer } = ask(
    {
      gap: { values: [1], tol: 0.1 },
      stopHeight: { values: [21.675], tol: 0.1 },
      clearance: { kind: "tyre", reading: { values: [20.861], tol: 0.305 } },
      payload: "trailer",
    },
    "osprey-wagon-rear",
  );
  expect(answer.answer).toBe("cantTell");
  expect(answer.why).toHaveLength(4);
  expect(
    answer.why
      .map(inModelUnits)
      .join(" ")
      .match(/touches/g),
  ).toHaveLength(2);
});

test("always: a record that reads and one to four finite sentences, or a refusal", () => {
  const some = (least: number, greatest: number) =>
    fc.option(
      fc
        .tuple(
          fc.double({ min: least, max: greatest, noNaN: true }),
          fc.double({ min: 0.1, max: 10, noNaN: true }),
        )
        .map(([value, tol]) => reading(value, tol)),
      { nil: undefined },
    );
  const question = fc.record({
    rideHeight: some(300, 800),
    gap: some(1, 150),
    stopHeight: some(20, 160),
    clearance: fc.option(
      fc.record({ kind: fc.constantFrom("tyre", "damper"), reading: some(5, 250) }),
      { nil: undefined },
    ),
    payload: fc.constantFrom(...usualPayloads.map(({ word }) => word)),
    platformId: fc.constantFrom(...demoPack.platforms.map((platform) => platform.id)),
  });
  fc.assert(
    fc.property(question, ({ clearance, platformId, payload, ...rest }) => {
      const given = Object.fromEntries(
        Object.entries(rest).filter(([, value]) => value !== undefined),
      ) as Partial<QuickCheckReadings>;
      const readings: QuickCheckReadings = {
        ...given,
        payload,
        ...(clearance?.reading === undefined
          ? {}
          : {
              clearance: { kind: clearance.kind as "tyre" | "damper", reading: clearance.reading },
            }),
      };
      const made = quickCheckRecord(
        demoPack,
        {
          platformId,
          use: "daily",
          readings,
          id,
          createdAt,
        },
        inModelUnits,
      );
      if (!made.ok) {
        expect(inModelUnits(made.fault.sentence)).not.toMatch(/NaN|Infinity|undefined/);
        return;
      }
      expect(readCheckValue(made.value.record).ok).toBe(true);
      const assessed = assessStatic(fitmentOf(made.value.record), options);
      if (!assessed.ok) return;
      const answer = quickCheckAnswer(made.value, assessed.value);
      const texts = answer.why.map(inModelUnits);
      expect(texts.length).toBeGreaterThan(0);
      const ends = texts.join(" ").match(/[.!?](?= [A-Z]|$)/g) ?? [];
      expect(ends.length).toBeLessThanOrEqual(4);
      expect(texts.join(" ")).not.toMatch(/NaN|Infinity|undefined/);
      expect(answer.answer === "cantTell").toBe(answer.settle !== null);
      if (answer.answer === "yes") expect(answer.tallerMm).toBeGreaterThan(0);
    }),
    { numRuns: 60 },
  );
});

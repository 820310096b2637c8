import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DesignEvent } from "../../../src/physics/fitment.ts";
import { DormandPrince } from "../../../src/physics/impact/dormandPrince.ts";
import type { ImpactSetup } from "../../../src/physics/impact/impactSetup.ts";
import { QuarterCar } from "../../../src/physics/impact/quarterCar.ts";
import { roadProfile } from "../../../src/physics/impact/roadProfile.ts";
import { switchCount, switches } from "../../../src/physics/impact/switches.ts";
import type { StopDamping } from "../../../src/physics/stop/damping.ts";
import {
  losesEnergy,
  type StopAtSpeed,
  staticOnly,
} from "../../../src/physics/stop/stopAtSpeed.ts";
import {
  dashpotOnly,
  linearStop,
  oneMass,
  straight,
} from "../../published/support/oneMassSetup.ts";
import { demoCorners, loadedSetup, unwrapped } from "../demoFitments.ts";
import { plainQuarterCar } from "./plainQuarterCar.ts";

/** Enough for the stop to be pulled now and then. */
const strongDamping: StopDamping = {
  coefficient: (x, velocity) => (velocity > 0 ? 0.6 : 1.1) + 0.01 * Math.max(0, x),
};

const viscoelastic: StopAtSpeed = {
  dashpot: null,
  restLoss: 0.1,
  staticShare: 1,
  branches: [
    { tauS: 0.002, share: 0.4 },
    { tauS: 0.1, share: 0.2 },
  ],
};

const plainSetups = demoCorners.map(({ fitment, corner }) => loadedSetup(fitment, corner));
const setups: readonly ImpactSetup[] = [
  ...plainSetups,
  ...plainSetups.map((setup) => ({ ...setup, atSpeed: dashpotOnly(strongDamping) })),
  ...plainSetups.map((setup) => ({ ...setup, atSpeed: viscoelastic })),
  ...plainSetups.map((setup) => ({
    ...setup,
    atSpeed: { ...viscoelastic, dashpot: strongDamping, staticShare: 0.9 },
  })),
  // Pressed at rest, a hard limit within reach.
  ...plainSetups.map((setup) => ({ ...setup, gapMm: setup.restTravelMm - 8, hardLimitMm: 35 })),
];

const landing: DesignEvent = { kind: "landing", heightM: 0.1 };
const bump: DesignEvent = { kind: "obstacle", heightM: 0.09, lengthM: 1.2, speedKmPerH: 36 };

const carOf = (setup: ImpactSetup, event: DesignEvent) =>
  new QuarterCar(setup, unwrapped(roadProfile(event)));

/** A moment of an event: heights from rest, m, and speeds, m/s, within what the layouts reach. */
const moments = fc
  .record({
    setup: fc.constantFrom(...setups),
    event: fc.constantFrom(landing, bump),
    t: fc.double({ min: 0, max: 0.15, noNaN: true }),
    zu: fc.double({ min: -0.03, max: 0.14, noNaN: true }),
    travel: fc.double({ min: -40, max: 70, noNaN: true }),
    vs: fc.double({ min: -2, max: 2, noNaN: true }),
    vu: fc.double({ min: -2, max: 2, noNaN: true }),
    forgotten: fc.tuple(
      fc.double({ min: 0, max: 3000, noNaN: true }),
      fc.double({ min: 0, max: 2000, noNaN: true }),
    ),
  })
  .map(({ setup, event, t, zu, travel, vs, vu, forgotten }) => {
    const car = carOf(setup, event);
    const fromRest = (travel - setup.restTravelMm) / 1000;
    const branches = setup.atSpeed.branches.map((_, index) => forgotten[index] ?? 0);
    const y = Float64Array.of(zu - fromRest, zu, vs, vu, ...branches);
    const plain = plainQuarterCar(setup, event);
    car.onBump = t < plain.bumpEndS;
    car.setSwitches(t, y);
    car.measure(t, y);
    if (!car.agrees(switches.pushing)) car.turn(switches.pushing, t, y);
    return { setup, event, car, plain, t, y };
  });

const rowOf = (car: QuarterCar, t: number, y: Float64Array) => {
  const rows = new Float64Array(3 + car.rowLength).fill(Number.NaN);
  car.derivative(t, y, rows, 3);
  expect([...rows.subarray(0, 3)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  return rows.subarray(3);
};

function expectNear(got: number | undefined, wanted: number, scale = 1, share = 1e-9): void {
  expect(Math.abs((got as number) - wanted)).toBeLessThanOrEqual(
    share * (scale + Math.abs(wanted)),
  );
}

/** Height of the bump and its speed, m and m/s: H/2·(1 − cos(2πVt/L)), model section 5. */
const onBumpAt = (t: number) => {
  const angularSpeed = (2 * Math.PI * 10) / 1.2;
  return {
    height: 0.045 * (1 - Math.cos(angularSpeed * t)),
    speed: 0.045 * angularSpeed * Math.sin(angularSpeed * t),
  };
};

describe("the quarter car at any moment", () => {
  it("moves as the laws written with max() and ?: say", () => {
    fc.assert(
      fc.property(moments, ({ car, plain, t, y }) => {
        const row = rowOf(car, t, y);
        const state = plain.stateOf(y);
        const wanted = plain.derivative(t, state);
        for (const place of [0, 1, 2, 3]) expectNear(row[place], wanted[place] as number);
        expectNear(row[car.column.stopForce], plain.observe(t, state).stopForce);
      }),
      { numRuns: 1000 },
    );
  });

  it("has the powers of damper, road and stop damping that its forces have", () => {
    fc.assert(
      fc.property(moments, ({ setup, event, car, plain, t, y }) => {
        const row = rowOf(car, t, y);
        const [, , as = 0, au = 0] = plain.derivative(t, plain.stateOf(y));
        const seen = plain.observe(t, plain.stateOf(y));
        const speed = seen.travelSpeed;
        const c = speed > 0 ? setup.damperBumpNsPerMm : setup.damperReboundNsPerMm;
        expectNear(row[car.column.damperPower], 1000 * c * speed ** 2);
        const tyre = setup.sprungMassKg * as + setup.unsprungMassKg * au;
        const roadSpeed = event === bump && car.onBump ? onBumpAt(t).speed : 0;
        expectNear(row[car.column.roadPower], tyre * roadSpeed, 100);
        const closing = new Float64Array(3);
        setup.kinematics.evaluate(seen.wheelTravel, closing);
        const { staticShare } = setup.atSpeed;
        const remaining =
          seen.compression > 0 ? staticShare * setup.stop.force(seen.compression) : 0;
        const beyond = losesEnergy(setup.atSpeed) ? seen.stopForce - remaining : 0;
        expectNear(row[car.column.stopLossPower], beyond * (closing[1] as number) * speed);
      }),
      { numRuns: 500 },
    );
  });

  it("measures each switch by what it stands for", () => {
    fc.assert(
      fc.property(moments, ({ setup, event, car, plain, t, y }) => {
        const seen = plain.observe(t, plain.stateOf(y));
        const wasOn = car.on.slice();
        car.measure(t, y);
        const { measures } = car;
        expect(measures[switches.compressing]).toBe((y[3] as number) - (y[2] as number));
        const compressionAt = (travel: number) => {
          const closing = new Float64Array(3);
          setup.kinematics.evaluate(travel, closing);
          return (closing[0] as number) - setup.gapMm;
        };
        const [least, greatest] = setup.kinematics.range;
        for (const [index, x] of [
          [switches.pressing, 0],
          [switches.fullStop, setup.stop.usableCompressionMm],
        ] as const) {
          const met = seen.wheelTravel - (measures[index] as number);
          if (met >= least && met <= greatest) expectNear(compressionAt(met), x, 10);
          else expect(met).toBe(x > compressionAt(0) ? Infinity : -Infinity);
        }
        if (setup.hardLimitMm === null) expect(measures[switches.hardContact]).toBe(-Infinity);
        else expectNear(measures[switches.hardContact], seen.wheelTravel - setup.hardLimitMm, 100);
        const road = event === bump && car.onBump ? onBumpAt(t).height : 0;
        expectNear(car.roadHeight(t), road);
        const weight = (setup.sprungMassKg + setup.unsprungMassKg) * 9.80665;
        expect(car.weight).toBeCloseTo(weight, 9);
        const tyre = 1000 * setup.tyreRateNPerMm * (road - (y[1] as number));
        expectNear(measures[switches.grounded], tyre + weight, 1e4);
        const mayPull =
          losesEnergy(setup.atSpeed) &&
          wasOn[switches.pressing] === 1 &&
          (seen.travelSpeed < 0 || setup.atSpeed.branches.length > 0);
        if (!mayPull) {
          expect(measures[switches.pushing]).toBe(1);
          return;
        }
        const closing = new Float64Array(3);
        setup.kinematics.evaluate(seen.wheelTravel, closing);
        expectNear(measures[switches.pushing], seen.wholeForce, 1000);
      }),
      { numRuns: 1000 },
    );
  });

  it("measures the same at the end of a step, from its last row, and of one switch alone", () => {
    fc.assert(
      fc.property(moments, fc.nat({ max: switchCount - 1 }), ({ car, t, y }, index) => {
        const solver = new DormandPrince(car);
        solver.state.set(y);
        solver.time = t;
        solver.restart();
        solver.attempt(1e-4);
        car.measure(t + solver.size, solver.next);
        const wanted = car.measures.slice();
        car.measures.fill(Number.NaN);
        car.measureEnd(solver);
        expect(car.measures).toEqual(wanted);
        const energy = car.stopEnergy(solver.next);
        if (car.on[switches.pressing] === 1) expect(car.stopEnergyAtEnd(solver)).toBe(energy);
        car.measures.fill(Number.NaN);
        car.measureOne(index, t + solver.size, solver.next);
        expect(car.measures[index]).toBe(wanted[index]);
      }),
      { numRuns: 300 },
    );
  });

  it("sets its switches by the side on which each measure stands", () => {
    fc.assert(
      fc.property(moments, ({ setup, car, plain, t, y }) => {
        car.setSwitches(t, y);
        // A wheel that stands still is about to rise.
        expect(car.on[switches.compressing]).toBe((y[3] as number) >= (y[2] as number) ? 1 : 0);
        for (const index of [1, 2, 3, 4]) {
          expect(car.on[index]).toBe((car.measures[index] as number) > 0 ? 1 : 0);
        }
        const seen = plain.observe(t, plain.stateOf(y));
        const inContact = car.on[switches.pressing] === 1;
        const faded = setup.atSpeed.branches.length > 0 && inContact && seen.wholeForce < -0.01;
        expect(car.on[switches.pushing]).toBe(faded ? 0 : 1);
        const slides = setup.atSpeed.restLoss > 0 && inContact;
        expect(car.on[switches.closingFast]).toBe(slides && seen.closingSpeed > 5 ? 1 : 0);
        expect(car.on[switches.openingFast]).toBe(slides && seen.closingSpeed < -5 ? 1 : 0);
      }),
      { numRuns: 200 },
    );
  });

  it("holds the energy whose slopes are its forces", () => {
    const apart = 1e-6;
    fc.assert(
      fc.property(moments, ({ setup, car, plain, t, y }) => {
        const road = car.roadHeight(t);
        const weight = (setup.sprungMassKg + setup.unsprungMassKg) * 9.80665;
        const moved = (zs: number, zu: number) =>
          car.energy(t, Float64Array.of((y[0] as number) + zs, (y[1] as number) + zu, 0, 0))
            .potential;
        const slope = (zs: number, zu: number) => (moved(zs, zu) - moved(-zs, -zu)) / (2 * apart);
        const rest = plain.observe(0, [0, 0, 0, 0]);
        const closing = new Float64Array(3);
        setup.kinematics.evaluate(setup.restTravelMm, closing);
        const restForce = rest.stopForce * (closing[1] as number);
        const { wheelTravel } = plain.observe(t, [...y]);
        const past = Math.max(0, wheelTravel - (setup.hardLimitMm ?? Number.POSITIVE_INFINITY));
        const suspension =
          setup.wheelRateNPerMm * (wheelTravel - setup.restTravelMm) + 2000 * past - restForce;
        const tyre = Math.max(-weight, 1000 * setup.tyreRateNPerMm * (road - (y[1] as number)));
        expectNear(slope(apart, 0), -suspension, 1000, 1e-4);
        expectNear(slope(apart, apart), -tyre, 1000, 1e-4);
      }),
      { numRuns: 300 },
    );
  });

  it("holds no potential energy at rest on flat ground, and of two speeds their kinetic energy", () => {
    for (const setup of plainSetups) {
      const car = carOf(setup, landing);
      expect(car.energy(0, new Float64Array(4))).toEqual({ kinetic: 0, potential: 0 });
      const { kinetic } = car.energy(0, Float64Array.of(0, 0, 3, -2));
      expectNear(kinetic, 4.5 * setup.sprungMassKg + 2 * setup.unsprungMassKg);
    }
  });

  it("holds in its stop the area under the stop's curve", () => {
    const car = carOf({ ...oneMass, stop: linearStop(40), gapMm: 20, restTravelMm: 5 }, landing);
    const at = (travel: number) => Float64Array.of(-(travel - 5) / 1000, 0, 0, 0);
    expect(car.wheelTravel(at(50))).toBeCloseTo(50, 9);
    expect(car.compression(50)).toBe(30);
    expect(car.stopEnergy(at(50))).toBeCloseTo((40 * 30 ** 2) / 2 / 1000, 9);
    expect(car.stopEnergy(at(19))).toBe(0);
  });

  it("knows whether it starts on a bump, and whether its stop loses energy", () => {
    const [setup] = plainSetups as [ImpactSetup];
    expect(carOf(setup, landing).onBump).toBe(false);
    expect(carOf(setup, bump).onBump).toBe(true);
    expect(carOf({ ...setup, atSpeed: dashpotOnly(strongDamping) }, bump).isLossy).toBe(true);
    expect(carOf({ ...setup, atSpeed: viscoelastic }, bump).isLossy).toBe(true);
    expect(carOf({ ...setup, atSpeed: staticOnly }, bump).isLossy).toBe(false);
  });
});

describe("a stop that is straight over its wheel", () => {
  // 30 mm of gap at rest, 20 mm usable, 40 N/mm; the wheel is held by its own spring of 28 N/mm.
  const setup: ImpactSetup = {
    ...oneMass,
    kinematics: straight,
    stop: { ...linearStop(40), usableCompressionMm: 20 },
    gapMm: 30,
    hardLimitMm: 60,
    unsprungMassKg: 50,
    atSpeed: dashpotOnly({ coefficient: (_, velocity) => (velocity > 0 ? 0.5 : 0.8) }),
  };
  const at = (travel: number, speed: number) => Float64Array.of(-travel / 1000, 0, 0, speed);

  it("goes straight on a little before it is met, while its switch is on", () => {
    const car = carOf(setup, landing);
    car.setSwitches(0, at(31, 0));
    const elasticOnly = rowOf(car, 0, at(29, 0))[car.column.stopForce];
    expect(elasticOnly).toBeCloseTo(-40, 9);
    car.turn(switches.pressing, 0, at(31, 0));
    expect(rowOf(car, 0, at(31, 0))[car.column.stopForce]).toBe(0);
  });

  it("gives nothing once it is left behind, and takes what it held into heat", () => {
    const car = carOf(setup, landing);
    const y = at(32, -1);
    car.setSwitches(0, y);
    // Pushing or not, as told: 80 N static less 0.8 × 1000 mm/s.
    expect(rowOf(car, 0, y)[car.column.stopForce]).toBeCloseTo(80 - 800, 9);
    car.measure(0, y);
    expect(car.measures[switches.pushing]).toBeCloseTo(80 - 800, 9);
    car.turn(switches.pushing, 0, y);
    const row = rowOf(car, 0, y);
    expect(row[car.column.stopForce]).toBe(0);
    expect(row[car.column.stopLossPower]).toBeCloseTo(80, 9);
  });

  it("is taken to push again when it is met, or when the wheel turns, and only then", () => {
    for (const [turned, pushes] of [
      [switches.compressing, 1],
      [switches.pressing, 1],
      [switches.fullStop, 0],
      [switches.hardContact, 0],
      [switches.grounded, 0],
      [switches.pushing, 1],
    ] as const) {
      const car = carOf(setup, landing);
      car.setSwitches(0, at(32, -1));
      car.turn(switches.pushing, 0, at(32, -1));
      const before = car.on.slice();
      car.turn(turned, 0, at(32, -1));
      expect(car.on[switches.pushing]).toBe(pushes);
      if (turned !== switches.pushing) expect(car.on[turned]).toBe(1 - (before[turned] as number));
    }
  });

  it("starts at rest with the wheel about to rise, and with damping that compresses", () => {
    const car = carOf(setup, landing);
    car.setSwitches(0, at(0, 0));
    expect([...car.on]).toEqual([1, 0, 0, 0, 1, 1, 0, 0]);
    car.setSwitches(0, at(30, 0));
    expect([...car.on]).toEqual([1, 0, 0, 0, 1, 1, 0, 0]);
    car.setSwitches(0, at(61, 1));
    expect([...car.on]).toEqual([1, 1, 1, 1, 1, 1, 0, 0]);
    car.setSwitches(0, at(61, -1e-9));
    expect(car.on[switches.compressing]).toBe(0);
  });

  it("forgets what its switches were when they are set anew", () => {
    const car = carOf(setup, landing);
    car.setSwitches(0, at(40, -1));
    car.turn(switches.pushing, 0, at(32, -1));
    expect(car.on[switches.pushing]).toBe(0);
    car.setSwitches(0, at(40, -1));
    expect([...car.on]).toEqual([0, 1, 0, 0, 1, 1, 0, 0]);
    // Whether it pulls is not asked before the stop is known to be pressed.
    expect(car.measures[switches.pushing]).toBe(1);
  });
});

describe("a switch", () => {
  // By how much each measure may stand on the wrong side: m/s, mm, mm, mm, N, N, mm/s, mm/s.
  const slack = [1e-8, 1e-6, 1e-6, 1e-6, 1e-4, 1e-4, 1e-5, 1e-5];

  it("agrees with its measure up to its slack on the wrong side, on or off", () => {
    const car = carOf(oneMass, landing);
    for (let index = 0; index < switchCount; index++) {
      const allowed = slack[index] as number;
      for (const [on, measure, agrees] of [
        [1, 5, true],
        [1, 0, true],
        [1, -allowed, true],
        [1, -1.001 * allowed, false],
        [1, -5, false],
        [0, -5, true],
        [0, 0, true],
        [0, allowed, true],
        [0, 1.001 * allowed, false],
        [0, 5, false],
      ] as const) {
        car.on[index] = on;
        car.measures[index] = measure;
        expect(car.agrees(index), `${index} ${on} ${measure}`).toBe(agrees);
      }
    }
  });

  it("is turning where its measure is 0 within the same slack, on either side", () => {
    const car = carOf(oneMass, landing);
    for (let index = 0; index < switchCount; index++) {
      const allowed = slack[index] as number;
      for (const sign of [1, -1]) {
        car.measures[index] = sign * allowed;
        expect(car.isTurning(index)).toBe(true);
        car.measures[index] = sign * 1.001 * allowed;
        expect(car.isTurning(index)).toBe(false);
      }
    }
  });
});

describe("a switch that agrees at both ends of a step may have turned twice within", () => {
  const free: ImpactSetup = { ...oneMass, unsprungMassKg: 50, tyreRateNPerMm: 200 };
  const weight = 550 * 9.80665;

  interface Ends {
    /** Accelerations of the wheel less those of the body, m/s², at start and end. */
    readonly travel?: readonly [number, number];
    /** Speeds of the wheel, m/s, at start and end. */
    readonly wheel?: readonly [number, number];
    readonly time?: number;
    readonly size?: number;
  }

  /** A car in a state and a step with these ends: body at rest, all of the acceleration the wheel's. */
  function mayTurn(car: QuarterCar, ends: Ends): boolean {
    const { travel = [1, 1], wheel = [0, 0], time = 0.02, size = 0.05 } = ends;
    const { rowLength } = car;
    const rows = new Float64Array(7 * rowLength).fill(Number.NaN);
    for (const [row, acceleration] of [
      [0, travel[0]],
      [6, travel[1]],
    ] as const) {
      rows[rowLength * row + 2] = 3;
      rows[rowLength * row + 3] = 3 + acceleration;
    }
    const state = Float64Array.of(0, 0, 0, wheel[0]);
    const next = Float64Array.of(0, 0, 0, wheel[1]);
    return car.mayTurnWithin({ time, size, state, next, rows });
  }

  /** A free car, compressing or not, with its tyre on the ground or not, held by `held` of the weight. */
  function standing(on: { compressing: 0 | 1; grounded: 0 | 1; held: number }, event = landing) {
    const car = carOf(free, event);
    car.setSwitches(0, new Float64Array(4));
    car.on[switches.compressing] = on.compressing;
    car.on[switches.grounded] = on.grounded;
    car.measures[switches.grounded] = on.held * weight;
    return car;
  }

  it("where the wheel's travel first nears its turn and then leaves it", () => {
    const compressing = standing({ compressing: 1, grounded: 1, held: 1 });
    expect(mayTurn(compressing, { travel: [-2, 3] })).toBe(true);
    expect(mayTurn(compressing, { travel: [-2, -1] })).toBe(false);
    expect(mayTurn(compressing, { travel: [2, 3] })).toBe(false);
    expect(mayTurn(compressing, { travel: [3, -2] })).toBe(false);
    expect(mayTurn(compressing, { travel: [0, 3] })).toBe(false);
    expect(mayTurn(compressing, { travel: [-2, 0] })).toBe(false);
    const rebounding = standing({ compressing: 0, grounded: 1, held: 1 });
    expect(mayTurn(rebounding, { travel: [3, -2] })).toBe(true);
    expect(mayTurn(rebounding, { travel: [-2, 3] })).toBe(false);
  });

  it("where a tyre that hardly holds first nears its turn and then leaves it", () => {
    const holding = (held: number) => standing({ compressing: 1, grounded: 1, held });
    // On flat ground the tyre is let go while the wheel rises.
    expect(mayTurn(holding(0.24), { wheel: [1, -1] })).toBe(true);
    expect(mayTurn(holding(-0.24), { wheel: [1, -1] })).toBe(true);
    expect(mayTurn(holding(0.25), { wheel: [1, -1] })).toBe(false);
    expect(mayTurn(holding(0.24), { wheel: [1, 1] })).toBe(false);
    expect(mayTurn(holding(0.24), { wheel: [-1, -1] })).toBe(false);
    expect(mayTurn(holding(0.24), { wheel: [-1, 1] })).toBe(false);
    expect(mayTurn(holding(0.24), { wheel: [0, -1] })).toBe(false);
    expect(mayTurn(holding(0.24), { wheel: [1, 0] })).toBe(false);
    const lifted = standing({ compressing: 1, grounded: 0, held: -0.1 });
    expect(mayTurn(lifted, { wheel: [-1, 1] })).toBe(true);
    expect(mayTurn(lifted, { wheel: [1, -1] })).toBe(false);
  });

  it("where the road falls away from the tyre and then rises to it", () => {
    const car = standing({ compressing: 1, grounded: 1, held: 0.1 }, bump);
    // A bump of 0.12 s: its road falls from 0.06 s on.
    const [start, end] = [onBumpAt(0.02).speed, onBumpAt(0.07).speed];
    expect(start).toBeGreaterThan(2);
    expect(end).toBeLessThan(-1);
    expect(mayTurn(car, { wheel: [start + 0.01, end - 0.01] })).toBe(true);
    expect(mayTurn(car, { wheel: [start - 0.01, end - 0.01] })).toBe(false);
    expect(mayTurn(car, { wheel: [start + 0.01, end + 0.01] })).toBe(false);
    car.onBump = false;
    expect(mayTurn(car, { wheel: [0.01, -0.01] })).toBe(true);
  });

  it("where a damped stop rebounds, always", () => {
    const damped = carOf({ ...free, atSpeed: dashpotOnly(strongDamping), gapMm: 30 }, landing);
    const calm: Ends = { travel: [1, 1] };
    const pressed = Float64Array.of(-0.04, 0, 0, 0);
    damped.setSwitches(0, pressed);
    damped.on[switches.compressing] = 0;
    expect(mayTurn(damped, calm)).toBe(true);
    damped.on[switches.compressing] = 1;
    expect(mayTurn(damped, calm)).toBe(false);
    damped.on[switches.compressing] = 0;
    damped.on[switches.pressing] = 0;
    expect(mayTurn(damped, calm)).toBe(false);
    const undamped = carOf({ ...free, gapMm: 30 }, landing);
    undamped.setSwitches(0, pressed);
    undamped.on[switches.compressing] = 0;
    expect(mayTurn(undamped, calm)).toBe(false);
  });
});

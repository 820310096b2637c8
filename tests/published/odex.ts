import type { DesignEvent } from "../../src/physics/fitment.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import type { ImpactSetup } from "../../src/physics/impact/impactSetup.ts";
import { rulesOf } from "../../src/physics/road/useRules.ts";
import { demoCorners, loadedSetup, unwrapped } from "../physics/demoFitments.ts";
import { hardCases } from "../physics/impact/hardCases.ts";
import { lossyCases } from "../physics/impact/lossyCases.ts";
import { odexSolver } from "../physics/impact/odexSolver.ts";
import { plainQuarterCar } from "../physics/impact/plainQuarterCar.ts";
import { publishedSource } from "./support/published.ts";

/*
 * The solver odex (Hairer & Wanner; in JavaScript by another author) on the plain equations of the
 * quarter car with its stop, written out apart: every design event of every corner of the demo checks.
 */

const figures = [
  "peakWheelTravelMm",
  "peakCompressionMm",
  "peakStopForceN",
  "peakAccelerationG",
  "energyInJ",
  "energyOutJ",
  "leaveSpeedMmPerS",
  "tyreOffMs",
  "bodyRiseMm",
] as const;
type Figures = Record<(typeof figures)[number], number>;

const gridS = 1e-5;

function byOdex(setup: ImpactSetup, event: DesignEvent): Figures {
  const car = plainQuarterCar(setup, event);
  const solver = odexSolver(car.start.length);
  solver.absoluteTolerance = 1e-9;
  solver.relativeTolerance = 1e-9;
  solver.maxSteps = 1e6;
  solver.maxStepSize = 1e-3;
  solver.denseOutput = true;
  const peaks = { wheelTravel: 0, compression: 0, stopForce: 0, acceleration: 0 };
  let leaveSpeed = 0;
  let tyreOff = 0;
  let bodyRise = 0;
  let before = car.observe(0, car.start);
  const output = solver.grid(gridS, (t, y) => {
    const now = car.observe(t, y);
    bodyRise = Math.max(bodyRise, y[0] as number);
    if (now.tyreForce <= -car.weight) tyreOff += gridS;
    for (const name of ["wheelTravel", "compression", "stopForce", "acceleration"] as const) {
      peaks[name] = Math.max(peaks[name], now[name]);
    }
    if (before.compression > 0 && now.compression <= 0) {
      // Straight on between the two points of the grid.
      const share = before.compression / (before.compression - now.compression);
      const speed = before.travelSpeed + share * (now.travelSpeed - before.travelSpeed);
      leaveSpeed = Math.max(leaveSpeed, -1000 * speed);
    }
    before = now;
  });
  const { y } = solver.solve(car.derivative, 0, car.start, car.endS, output);
  return {
    peakWheelTravelMm: peaks.wheelTravel,
    peakCompressionMm: peaks.compression,
    peakStopForceN: peaks.stopForce,
    peakAccelerationG: peaks.acceleration / 9.80665,
    energyInJ: y[4] as number,
    energyOutJ: y[5] as number,
    leaveSpeedMmPerS: leaveSpeed,
    tyreOffMs: 1000 * tyreOff,
    bodyRiseMm: 1000 * bodyRise,
  };
}

/** The greatest share by which a figure of the event is off; of energies, a share of what went in. */
function greatestShareOff(setup: ImpactSetup, event: DesignEvent): number {
  const wanted = byOdex(setup, event);
  const { result } = unwrapped(simulateImpact(setup, event));
  const shares = figures.map((figure) => {
    let off = Math.abs(result[figure] - wanted[figure]);
    // Counted on the grid: off by one of its steps at each end.
    if (figure === "tyreOffMs") off = Math.max(0, off - 4e3 * gridS);
    if (off === 0) return 0;
    const isNothing = figure === "energyOutJ" && wanted.energyOutJ < 1e-3 * wanted.energyInJ;
    return off / (isNothing ? wanted.energyInJ : wanted[figure]);
  });
  return Math.max(...shares);
}

export const odex = publishedSource(
  "odex 2 (Hairer & Wanner) on the plain equations",
  "met",
  (published) => {
    const compared = (name: string, setup: ImpactSetup, event: DesignEvent) =>
      published(
        `${name}: greatest share off among its figures`,
        0,
        () => greatestShareOff(setup, event),
        1e-3,
      );
    for (const { name, fitment, corner } of demoCorners) {
      for (const event of rulesOf(fitment.use).events) {
        compared(`${name}, ${event.kind}`, loadedSetup(fitment, corner), event);
      }
    }
    for (const { name, setup, event } of [...hardCases, ...lossyCases])
      compared(name, setup, event);
  },
);

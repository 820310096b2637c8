import { assessStatic } from "../../../src/physics/assess.ts";
import type { Corner, Fitment, Layout, Reading } from "../../../src/physics/fitment.ts";
import { RandomSource } from "../../../src/physics/uncertainty/randomSource.ts";
import type { PublishedStop } from "../../published/publishedSuspensions.ts";
import { unwrapped } from "../demoFitments.ts";

/*
 * A person measures a published suspension of which the truth is known: every reading lies somewhere within its
 * ± of what it should be. The stop is one that is fully pressed at exactly 85 mm of wheel travel, and the
 * hard limit comes 2 mm later.
 */
const fullStopMm = 85;
const contactMm = 35;
const reserveMm = 2;
const gapTolerance = 1;
const limitTolerance = 2;
/** Scatter of the usable compression from stop to stop, as a share of it. */
const usableShare = 0.05;

interface Measured {
  /** What the readings give for full stop less what it is, mm. */
  readonly error: number;
  /** Does the 95 % interval hold it? */
  readonly holds: boolean;
  /** Is the reserve of 2 mm called enough? */
  readonly calledOk: boolean;
}

/** s at a wheel travel of the table, straight between its rows, mm. */
function closingAt({ wheelTravelMm, closingMm }: PublishedStop, z: number): number {
  const above = wheelTravelMm.findIndex((travel) => travel >= z);
  const [z1 = 0, z2 = 0] = [wheelTravelMm[above - 1], wheelTravelMm[above]];
  const [s1 = 0, s2 = 0] = [closingMm[above - 1], closingMm[above]];
  return s1 + ((z - z1) / (z2 - z1)) * (s2 - s1);
}

/** One measuring of a stop with the layout's readings as they should be; `layout` may be misread in method. */
export function measured(
  stop: PublishedStop,
  layout: Layout,
  name: string,
  samples = 10_000,
): Measured {
  const source = RandomSource.stream(1, name);
  const within = (value: number, tol: number) => value + tol * source.nextSymmetric();
  const taken = (value: number, tol: number): Reading => ({ values: [within(value, tol)], tol });
  const gap = closingAt(stop, contactMm);
  const usable = closingAt(stop, fullStopMm) - gap;
  const told = within(usable, usableShare * usable);
  const isAxle = layout.kind === "axle";
  const limit = isAxle
    ? taken(closingAt(stop, fullStopMm + reserveMm), limitTolerance)
    : taken(fullStopMm + reserveMm, limitTolerance);
  const corner: Corner = {
    side: "left",
    gap: taken(gap, gapTolerance),
    limits: [{ kind: "metal", at: isAxle ? "stop" : "wheel", reading: limit }],
  };
  const readings = Object.fromEntries(
    Object.entries<Reading>(layout.readings).map(([id, { values, tol }]) => [
      id,
      taken(values[0] ?? Number.NaN, tol),
    ]),
  );
  const fitment: Fitment = {
    use: "offroad",
    layout: { ...layout, readings } as Layout,
    corners: [corner],
    stop: {
      name: "of the test",
      duty: "impact",
      freeHeight: { values: [2 * told], tol: 0.5 },
      usableCompressionMm: told,
      usableTolMm: usableShare * told,
      curve: [
        [told / 2, 2000],
        [told, 12_000],
      ],
      damping: null,
      testedAtSpeed: false,
    },
  };
  const [assessed] = unwrapped(assessStatic(fitment, { samples })).corners;
  if (assessed === undefined) throw new Error("no corner");
  const [least, greatest] = assessed.intervals.wheelTravelToFullStopMm;
  const clearance = assessed.checks.find(({ id }) => id === "clearance");
  return {
    error: assessed.wheelTravelToFullStopMm - fullStopMm,
    holds: least <= fullStopMm && fullStopMm <= greatest,
    calledOk: clearance?.state === "ok",
  };
}

interface MeasuredMany {
  readonly count: number;
  readonly rootMeanSquare: number;
  readonly meanError: number;
  /** Of the greatest magnitude, with its sign. */
  readonly worst: number;
  readonly holds: number;
  readonly calledOk: number;
}

/** Shares and errors of many measurings. */
export function summary(results: readonly Measured[]): MeasuredMany {
  const count = results.length;
  const share = (is: (result: Measured) => boolean) => results.filter(is).length / count;
  const errors = results.map(({ error }) => error);
  return {
    count,
    rootMeanSquare: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / count),
    meanError: errors.reduce((sum, error) => sum + error, 0) / count,
    worst: errors.reduce((worst, error) => (Math.abs(error) > Math.abs(worst) ? error : worst), 0),
    holds: share(({ holds }) => holds),
    calledOk: share(({ calledOk }) => calledOk),
  };
}

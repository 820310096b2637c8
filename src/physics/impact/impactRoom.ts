import { DormandPrince } from "./dormandPrince.ts";
import { ImpactPeaks } from "./impactPeaks.ts";
import type { QuarterCar } from "./quarterCar.ts";

/** What a run needs room for; nothing of one run is left to the next. */
export interface ImpactRoom {
  readonly solver: DormandPrince;
  readonly peaks: ImpactPeaks;
  /** A state looked at. */
  readonly probe: Float64Array;
}

/** Room of runs that have ended, by their count of states. */
const idle = new Map<number, ImpactRoom>();

export function roomFor(car: QuarterCar): ImpactRoom {
  const known = idle.get(car.stateCount);
  if (known === undefined) {
    const probe = new Float64Array(car.stateCount);
    return { solver: new DormandPrince(car), peaks: new ImpactPeaks(car), probe };
  }
  idle.delete(car.stateCount);
  known.solver.begin(car);
  known.peaks.begin();
  return known;
}

/** Gives the room of a run that has ended to the next of as many states. */
export function giveBack(car: QuarterCar, room: ImpactRoom): void {
  idle.set(car.stateCount, room);
}

import type { DesignEvent } from "../../../src/physics/fitment.ts";
import type { ImpactSetup } from "../../../src/physics/impact/impactSetup.ts";
import { dashpotOnly, linearStop, oneMass } from "../../published/support/oneMassSetup.ts";

export interface HardCase {
  readonly name: string;
  readonly setup: ImpactSetup;
  readonly event: DesignEvent;
}

interface Corner {
  readonly massesKg: readonly [sprung: number, unsprung: number];
  readonly ratesNPerMm: readonly [wheel: number, tyre: number];
  readonly damperNsPerMm: readonly [bump: number, rebound: number];
  readonly stop: { rate: number; usableMm: number; damping: readonly [number, number] };
  readonly gapMm: number;
  readonly hardLimitMm: number;
}

function setupOf(corner: Corner): ImpactSetup {
  const { rate, usableMm, damping } = corner.stop;
  return {
    ...oneMass,
    stop: { ...linearStop(rate), usableCompressionMm: usableMm },
    atSpeed: dashpotOnly({
      coefficient: (_, velocity) => (velocity > 0 ? damping[0] : damping[1]),
    }),
    gapMm: corner.gapMm,
    hardLimitMm: corner.hardLimitMm,
    sprungMassKg: corner.massesKg[0],
    unsprungMassKg: corner.massesKg[1],
    wheelRateNPerMm: corner.ratesNPerMm[0],
    tyreRateNPerMm: corner.ratesNPerMm[1],
    damperBumpNsPerMm: corner.damperNsPerMm[0],
    damperReboundNsPerMm: corner.damperNsPerMm[1],
  };
}

/** Soft stops, damped, that end on the hard limit soon after they are met: the laws change close together. */
export const hardCases: readonly HardCase[] = [
  {
    name: "a limit 0.2 mm past contact, over a bump",
    setup: setupOf({
      massesKg: [608, 60],
      ratesNPerMm: [22, 313],
      damperNsPerMm: [0.77, 5.53],
      stop: { rate: 6, usableMm: 24.8, damping: [0.0145, 4.7] },
      gapMm: 12.4,
      hardLimitMm: 12.6,
    }),
    event: { kind: "obstacle", heightM: 0.12, lengthM: 1.85, speedKmPerH: 27.7 },
  },
  {
    name: "a limit 0.4 mm past contact, a landing",
    setup: setupOf({
      massesKg: [210, 61],
      ratesNPerMm: [29.4, 290],
      damperNsPerMm: [1.93, 4.71],
      stop: { rate: 9.55, usableMm: 0.68, damping: [0.11, 8.2] },
      gapMm: 53.5,
      hardLimitMm: 53.9,
    }),
    event: { kind: "landing", heightM: 0.266 },
  },
  {
    name: "a stop that rebounds slower than it is left, a landing",
    setup: setupOf({
      massesKg: [190, 41],
      ratesNPerMm: [16.4, 311],
      damperNsPerMm: [0.33, 1.35],
      stop: { rate: 4, usableMm: 2.03, damping: [3.07, 7.9] },
      gapMm: 19.3,
      hardLimitMm: 30.9,
    }),
    event: { kind: "landing", heightM: 0.153 },
  },
  {
    name: "a stop that rebounds slower than it is left, over a bump",
    setup: setupOf({
      massesKg: [435, 74],
      ratesNPerMm: [53.9, 362],
      damperNsPerMm: [3.62, 7.63],
      stop: { rate: 58.7, usableMm: 5.5, damping: [2.5, 2.33] },
      gapMm: 50,
      hardLimitMm: 62.8,
    }),
    event: { kind: "obstacle", heightM: 0.163, lengthM: 2.05, speedKmPerH: 62.8 },
  },
];

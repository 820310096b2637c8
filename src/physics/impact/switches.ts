/** Each switch turns a smooth law into another; it is on where its measure is above 0. */
export const switches = {
  /** Wheel rising toward the body: bump damping. */
  compressing: 0,
  /** Stop in contact. */
  pressing: 1,
  /** Past the usable compression. */
  fullStop: 2,
  /** Past the hard limit. */
  hardContact: 3,
  /** Tyre on the ground. */
  grounded: 4,
  /** Stop still pushing: not slower to rebound than it is pulled away from. */
  pushing: 5,
  /** Stop closing, or opening, fast enough for its whole rest loss. */
  closingFast: 6,
  openingFast: 7,
} as const;

export const switchCount = 8;

/** By how much a switch's measure may stand on the wrong side: m/s, mm, mm, mm, N, N, mm/s, mm/s. */
export const slack = Float64Array.of(1e-8, 1e-6, 1e-6, 1e-6, 1e-4, 1e-4, 1e-5, 1e-5);

/**
 * Columns of a row: the derivatives of the state, then the powers, then the stop's force, and of one in
 * contact its compression, mm, its closing speed, mm/s, and if it loses energy the force before it is held
 * at 0 or above, N.
 */
export interface RowColumns {
  readonly sprungAcceleration: number;
  /** Into the stop beyond what remains at rest: what its force is more, or less, than that. */
  readonly stopLossPower: number;
  readonly roadPower: number;
  readonly damperPower: number;
  readonly stopForce: number;
  readonly wholeForce: number;
  readonly closingSpeed: number;
  readonly compression: number;
}

/** Heights and speeds of the two masses; the states of the stop's branches follow them. */
export const massStates = 4;

/** The columns of a car of so many states, and the length of its rows. */
export function rowColumns(stateCount: number): { column: RowColumns; rowLength: number } {
  return {
    column: {
      sprungAcceleration: 2,
      stopLossPower: stateCount,
      roadPower: stateCount + 1,
      damperPower: stateCount + 2,
      stopForce: stateCount + 3,
      wholeForce: stateCount + 4,
      closingSpeed: stateCount + 5,
      compression: stateCount + 6,
    },
    rowLength: stateCount + 7,
  };
}

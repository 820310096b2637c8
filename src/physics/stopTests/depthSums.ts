/** Sums for a line through the origin, y = c·v, of the rows of one depth, direction and speed. */
export interface Sums {
  rows: number;
  speedSquares: number;
  products: number;
  forceSquares: number;
  speeds: number;
  /** Of the rest loss at share 1, F∞·σ(v): its square, with the speed and with the force. */
  restSquares: number;
  restSpeed: number;
  restForce: number;
}

export function emptySums(): Sums {
  return {
    rows: 0,
    speedSquares: 0,
    products: 0,
    forceSquares: 0,
    speeds: 0,
    restSquares: 0,
    restSpeed: 0,
    restForce: 0,
  };
}

export function addRow(sums: Sums, speed: number, beyond: number, rest: number): void {
  sums.restSquares += rest * rest;
  sums.restSpeed += rest * speed;
  sums.restForce += rest * beyond;
  sums.rows++;
  sums.speedSquares += speed * speed;
  sums.products += speed * beyond;
  sums.forceSquares += beyond * beyond;
  sums.speeds += Math.abs(speed);
}

export function totalOf(sums: readonly Sums[]): Sums {
  const total = emptySums();
  for (const each of sums) {
    total.rows += each.rows;
    total.speedSquares += each.speedSquares;
    total.products += each.products;
    total.forceSquares += each.forceSquares;
    total.speeds += each.speeds;
    total.restSquares += each.restSquares;
    total.restSpeed += each.restSpeed;
    total.restForce += each.restForce;
  }
  return total;
}

/** Σy′², Σy′v with y′ = y − h·F∞·σ(v). */
export function withoutRest(sums: Sums, h: number): Sums {
  return {
    ...sums,
    products: sums.products - h * sums.restSpeed,
    forceSquares: sums.forceSquares - 2 * h * sums.restForce + h * h * sums.restSquares,
  };
}

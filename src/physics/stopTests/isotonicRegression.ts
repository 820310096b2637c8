/** A run of neighbours that share one fitted value. */
export interface IsotonicBlock {
  /** First and last place in the data that the block holds. */
  readonly from: number;
  readonly to: number;
  /** Weighted mean of its values. */
  readonly value: number;
  readonly weight: number;
}

/**
 * Isotonic regression: the values that never fall and lie nearest to the given ones in weighted least
 * squares. Pool-adjacent-violators: Ayer, Brunk, Ewing, Reid & Silverman, Ann. Math. Stat. 26 (1955)
 * 641; Barlow, Bartholomew, Bremner & Brunk, Statistical Inference under Order Restrictions (1972).
 *
 * `values` in any unit, in order of the abscissa; `weights` above 0, of the same length. Returns the
 * blocks, values strictly rising from block to block; empty for no values. Linear in time.
 */
export function isotonicRegression(
  values: ArrayLike<number>,
  weights: ArrayLike<number>,
): readonly IsotonicBlock[] {
  const blocks: IsotonicBlock[] = [];
  for (let place = 0; place < values.length; place++) {
    let block: IsotonicBlock = {
      from: place,
      to: place,
      value: values[place],
      weight: weights[place],
    };
    for (
      let before = blocks.at(-1);
      before !== undefined && before.value >= block.value;
      before = blocks.at(-1)
    ) {
      const weight = before.weight + block.weight;
      block = {
        from: before.from,
        to: block.to,
        value: (before.weight * before.value + block.weight * block.value) / weight,
        weight,
      };
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks;
}

/**
 * Greatest of equally spaced values, by the top of the parabola through a value that stands highest and
 * its two neighbours; exact where the values lie on one parabola. 0 where none of those between the two
 * ends stands highest above 0. Source: common practice.
 */
export function greatestInside(values: Float64Array, count: number): number {
  let greatest = 0;
  for (let place = 1; place < count - 1; place++) {
    const before = values[place - 1];
    const middle = values[place];
    const after = values[place + 1];
    const bend = before - 2 * middle + after;
    if (!(middle >= before && middle >= after && bend < 0)) continue;
    const lean = (after - before) / 2;
    greatest = Math.max(greatest, middle - (lean * lean) / (2 * bend));
  }
  return greatest;
}

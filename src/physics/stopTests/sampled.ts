/**
 * The places of a fair sample of at most `most` out of `count`, evenly spread, first and last among
 * them: for a plot, never for a figure.
 */
export function sampledPlaces(count: number, most: number): Uint32Array {
  const taken = Math.min(count, most);
  const places = new Uint32Array(taken);
  for (let index = 0; index < taken; index++) {
    places[index] = Math.round((index * (count - 1)) / Math.max(1, taken - 1));
  }
  return places;
}

/** The values at these places, in their order. */
export function valuesAt(values: Float64Array, places: Uint32Array): Float64Array {
  const taken = new Float64Array(places.length);
  for (let index = 0; index < taken.length; index++) {
    taken[index] = values[places[index]];
  }
  return taken;
}

/** The places of the values that are wanted. */
export function placesWhere(values: Float64Array, wanted: (value: number) => boolean): Uint32Array {
  const found = new Uint32Array(values.length);
  let count = 0;
  for (let place = 0; place < found.length; place++) {
    if (wanted(values[place])) found[count++] = place;
  }
  return found.subarray(0, count);
}

/** These places by the value there, the least first. */
export function risingPlaces(values: Float64Array, places: Uint32Array): Uint32Array {
  return places.slice().sort((a, b) => values[a] - values[b]);
}

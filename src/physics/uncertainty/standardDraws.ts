import { RandomSource } from "./randomSource.ts";

/** Columns remembered at most: more than the readings of a vehicle with two corners. */
const mostColumns = 64;

const remembered = new Map<string, Float32Array>();

/**
 * Draws of a rectangular distribution on −1 … 1, from a stream of the name's own. They depend on
 * nothing but name and seed, so they are made once and remembered. Source: JCGM 101:2008, 6.4.2.
 */
export function standardRectangular(name: string, seed: number, count: number): Float32Array {
  return column(`${name} tool`, seed, count, (source, out) => source.addRectangular(out, 1));
}

/** The same of a normal distribution with mean 0 and standard deviation 1. Source: 6.4.7. */
export function standardNormal(name: string, seed: number, count: number): Float32Array {
  return column(`${name} scatter`, seed, count, (source, out) => source.addNormal(out, 1));
}

function column(
  stream: string,
  seed: number,
  count: number,
  fill: (source: RandomSource, out: Float32Array) => void,
): Float32Array {
  const key = `${seed} ${count} ${stream}`;
  const known = remembered.get(key);
  if (known !== undefined) {
    // The one used last is forgotten last.
    remembered.delete(key);
    remembered.set(key, known);
    return known;
  }
  const made = new Float32Array(count);
  fill(RandomSource.stream(seed, stream), made);
  remembered.set(key, made);
  if (remembered.size > mostColumns) {
    for (const oldest of remembered.keys()) {
      remembered.delete(oldest);
      break;
    }
  }
  return made;
}

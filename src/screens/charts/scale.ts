/** Maps a value of the domain onto the screen range, px. */
export interface Scale {
  readonly domain: readonly [number, number];
  readonly range: readonly [number, number];
  at(value: number): number;
}

export function linearScale(
  domain: readonly [number, number],
  range: readonly [number, number],
): Scale {
  const [from, to] = domain;
  const [start, end] = range;
  const span = to - from || 1;
  return { domain, range, at: (value) => start + ((value - from) / span) * (end - start) };
}

/** Logarithmic; values at or below 0 sit at the start of the range, others stay inside it. */
export function logScale(
  domain: readonly [number, number],
  range: readonly [number, number],
): Scale {
  const [from, to] = domain;
  const inner = linearScale([Math.log10(from), Math.log10(to)], range);
  const clamped = (value: number) => Math.min(Math.max(value, from), to);
  return { domain, range, at: (value) => inner.at(Math.log10(clamped(value))) };
}

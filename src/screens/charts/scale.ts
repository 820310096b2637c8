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

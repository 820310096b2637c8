/** The items of two lists, place by place, as far as the shorter one goes. */
export function paired<First, Second>(
  first: readonly First[],
  second: ArrayLike<Second>,
): readonly (readonly [First, Second])[] {
  const pairs: (readonly [First, Second])[] = [];
  for (const [place, each] of first.entries()) {
    const other = second[place];
    if (other !== undefined) pairs.push([each, other]);
  }
  return pairs;
}

/** A stop of the pack with a spacer under it. */
export interface Combination {
  readonly stop: string;
  readonly spacerMm: number;
}

/** A stop that might be made: its height with any spacer, and its stiffness class. */
export interface Build {
  readonly heightMm: number;
  /** R5, N/mm. */
  readonly stiffnessClass: number;
}

/** What was tried on one checked vehicle. */
export interface Served {
  readonly key: string;
  readonly combinations: readonly Combination[];
  /** Where nothing serves: the builds that would. */
  readonly builds: readonly Build[];
}

export interface StopCoverage {
  readonly stop: string;
  readonly count: number;
  /** Without any spacer. */
  readonly plain: number;
  readonly share: number;
}

/** Which share of the vehicles each stop serves, with the best of its spacers or without one. */
export function coverageByStop(
  served: readonly Served[],
  stops: readonly string[],
): StopCoverage[] {
  return stops
    .map((stop) => {
      const with_ = served.filter(({ combinations }) =>
        combinations.some((each) => each.stop === stop),
      );
      const plain = with_.filter(({ combinations }) =>
        combinations.some((each) => each.stop === stop && each.spacerMm === 0),
      ).length;
      const count = with_.length;
      return { stop, count, plain, share: served.length === 0 ? 0 : count / served.length };
    })
    .sort((a, b) => b.count - a.count || (a.stop < b.stop ? -1 : 1));
}

export interface ProposedBuild extends Build {
  /** Vehicles it serves that none before it serves. */
  readonly more: number;
}

/**
 * Which builds to make next: again and again the one that serves most of the vehicles that neither the pack nor
 * a build chosen before serves; of several, the softer, then the lower. Greedy set cover: no choice of as many
 * builds serves more than 1/(1 − 1/e) = 1.58 times as many (Nemhauser, Wolsey and Fisher, Mathematical
 * Programming 14 (1978) 265, for the greatest cover by k sets).
 */
export function buildsToMake(unserved: readonly Served[], most = 5): ProposedBuild[] {
  let left = unserved;
  const chosen: ProposedBuild[] = [];
  while (chosen.length < most) {
    const counts = new Map<string, ProposedBuild>();
    for (const { builds } of left) {
      const own = new Map(builds.map((build) => [nameOf(build), build]));
      for (const [name, build] of own) {
        counts.set(name, { ...build, more: (counts.get(name)?.more ?? 0) + 1 });
      }
    }
    const [best] = [...counts.values()].sort(
      (a, b) => b.more - a.more || a.stiffnessClass - b.stiffnessClass || a.heightMm - b.heightMm,
    );
    if (best === undefined) break;
    chosen.push(best);
    const name = nameOf(best);
    left = left.filter(({ builds }) => !builds.some((build) => nameOf(build) === name));
  }
  return chosen;
}

function nameOf({ heightMm, stiffnessClass }: Build): string {
  return `${heightMm} ${stiffnessClass}`;
}

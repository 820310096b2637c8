import type { DampingPoint, StopBranch, StopLaw, TestDoubt } from "../fitment.ts";
import { RandomSource } from "../uncertainty/randomSource.ts";
import type { TestAnalysis } from "./benchTest.ts";
import { type FoundStop, foundStop } from "./foundStop.ts";
import type { DrawnLoss } from "./stopLoss.ts";

/** Laws that a stop takes along: their spread is known within a fifth. */
const lawsTaken = 16;
/** 95 % of a normal distribution, in standard deviations. */
const coverage = 1.96;
const digits = 3;

/** What a test leaves open of a stop's loss, as the stop takes it along; null where it found none. */
export function testDoubt(analysis: TestAnalysis): TestDoubt | null {
  const found = foundStop(analysis);
  if (!found?.testedAtSpeed) return null;
  const drawn = analysis.kind === "timed" && analysis.loss.ok ? analysis.loss.value.draws : [];
  const laws = drawn.length >= lawsTaken ? drawn.slice(0, lawsTaken) : drawnFromParts(found);
  return { fastestMmPerS: rounded(found.fastestMmPerS), laws: laws.map(lawOf) };
}

/** Laws by the ± of each part alone, each part normal and apart from the others, not below 0. */
function drawnFromParts({ doubt, ...found }: FoundStop): readonly DrawnLoss[] {
  const source = RandomSource.stream(1, "doubt of a test");
  const draw = (value: number, off: number | undefined) =>
    Math.max(0, value + ((off ?? 0) / coverage) * source.nextNormal());
  return Array.from({ length: lawsTaken }, () => ({
    staticShare: Math.min(1, Math.max(1e-3, draw(found.staticShare, doubt.staticShare))),
    restLoss: draw(found.restLoss, doubt.restLoss),
    branches: found.branches.map(({ tauS, share }, index) => ({
      tauS,
      share: draw(share, doubt.branches[index]?.share),
    })),
    damping:
      found.damping?.map(([depth, into, out], index): DampingPoint => {
        const [, offInto, offOut] = doubt.damping[index] ?? [];
        return [depth, draw(into, offInto), draw(out, offOut)];
      }) ?? null,
  }));
}

function lawOf({ staticShare, restLoss, branches, damping }: DrawnLoss): StopLaw {
  const shares = branches.map(({ tauS, share }): StopBranch => ({ tauS, share: rounded(share) }));
  return {
    damping:
      damping?.map(
        ([depth, into, out]): DampingPoint => [rounded(depth), rounded(into), rounded(out)],
      ) ?? null,
    ...(restLoss > 0 && { restLoss: rounded(restLoss) }),
    ...(staticShare < 1 && { staticShare: rounded(staticShare) }),
    ...(shares.length > 0 && { branches: shares }),
  };
}

function rounded(value: number): number {
  return Number(value.toPrecision(digits));
}

import { Chance } from "./chance.ts";
import { assessmentFault, type Fuzzer } from "./fuzzers.ts";

export interface Campaign {
  readonly name: string;
  readonly cases: number;
  readonly accepted: number;
  readonly assessed: number;
  readonly seconds: number;
  readonly failures: readonly Failure[];
}

interface Failure {
  readonly seed: number;
  readonly what: string;
  readonly input: string;
}

export interface CampaignOptions {
  readonly seed: number;
  readonly cases: number;
  /** One in so many records that were read is assessed too. */
  readonly assessEvery: number;
}

const mostFailures = 20;

/** Runs a fuzzer's cases, each from a seed of its own, so that one can be run again alone. */
export function campaign(fuzzer: Fuzzer, options: CampaignOptions): Campaign {
  const start = performance.now();
  const failures: Failure[] = [];
  let accepted = 0;
  let read = 0;
  let assessed = 0;
  let cases = 0;
  for (; cases < options.cases && failures.length < mostFailures; cases++) {
    const seed = (Math.imul(options.seed, 0x9e3779b1) + cases) >>> 0;
    let input = "";
    try {
      const result = fuzzer.run(new Chance(seed));
      input = result.input;
      if (result.accepted) accepted++;
      let { fault } = result;
      if (fault === null && result.record !== undefined) {
        read++;
        if (read % options.assessEvery === 0) {
          assessed++;
          fault = assessmentFault(result.record);
        }
      }
      if (fault !== null) failures.push({ seed, what: fault, input });
    } catch (error) {
      const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
      failures.push({ seed, what: `thrown: ${what}`, input });
    }
  }
  const seconds = (performance.now() - start) / 1000;
  return { name: fuzzer.name, cases, accepted, assessed, seconds, failures };
}

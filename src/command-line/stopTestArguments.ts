import { optionsIn, type Parsed } from "./options.ts";

/** A free mass on the stop. */
export interface HitAsked {
  readonly massKg: number;
  readonly speedMPerS: number;
}

interface StopTestArguments {
  readonly json: boolean;
  readonly hit: HitAsked | null;
  readonly files: readonly string[];
}

export const stopTestUsage = `Read bench tests of stops: static curve, loss at rest and at speed, with their ±.

  npm run -s stop-test -- [--json] [--hit KG,M_PER_S] FILE…

  --json             an array with one element for each file, in the order given
  --hit KG,M_PER_S   also a predicted hit: a free mass that meets the stop at this speed, such as 250,2
  --help             this text

Files are text with columns headed by name and unit: time, depth, force, or depth, speed, force.
A file that can't be read gives its error in its place, the others are still read, and the exit status
is 1. It is 2 when the command itself can't be understood.`;

export function parseStopTest(given: readonly string[]): Parsed<StopTestArguments> | "help" {
  const found = optionsIn(given, { switches: ["--json"], options: ["--hit"] });
  if (found === "help" || !found.ok) return found;
  const { switches, options, files } = found.value;
  const text = options.get("--hit") ?? "";
  const hit = parseHit(text);
  if (hit === null && options.has("--hit")) {
    return {
      ok: false,
      message: `--hit takes a mass in kg and a speed in m/s, such as 250,2, not “${text}”.`,
    };
  }
  return { ok: true, value: { json: switches.has("--json"), hit, files } };
}

function parseHit(text: string): HitAsked | null {
  const found = /^\s*(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (found === null) return null;
  const massKg = Number(found[1]);
  const speedMPerS = Number(found[2]);
  return massKg > 0 && speedMPerS > 0 ? { massKg, speedMPerS } : null;
}

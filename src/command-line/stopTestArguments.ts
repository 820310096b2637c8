import * as messages from "../words/compiled/command-line.ts";
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

export const stopTestUsage = messages.readBenchTestsOf;

export function parseStopTest(given: readonly string[]): Parsed<StopTestArguments> | "help" {
  const found = optionsIn(given, { switches: ["--json"], options: ["--hit"] });
  if (found === "help" || !found.ok) return found;
  const { switches, options, files } = found.value;
  const text = options.get("--hit") ?? "";
  const hit = parseHit(text);
  if (hit === null && options.has("--hit")) {
    return {
      ok: false,
      message: messages.hitTakesMassIn({ text }),
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

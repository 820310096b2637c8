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

export type ParsedStopTest =
  | { readonly ok: true; readonly value: StopTestArguments }
  | { readonly ok: false; readonly message: string };

export const stopTestUsage = `Read bench tests of stops: static curve, loss at rest and at speed, with their ±.

  npm run -s stop-test -- [--json] [--hit KG,M_PER_S] FILE…

  --json             an array with one element for each file, in the order given
  --hit KG,M_PER_S   also a predicted hit: a free mass that meets the stop at this speed, such as 250,2
  --help             this text

Files are text with columns headed by name and unit: time, depth, force, or depth, speed, force.
A file that can't be read gives its error in its place, the others are still read, and the exit status
is 1. It is 2 when the command itself can't be understood.`;

/** `--hit` takes the next argument or what follows "="; everything after "--" is a file. */
export function parseStopTest(given: readonly string[]): ParsedStopTest | "help" {
  let json = false;
  let hit: HitAsked | null = null;
  const files: string[] = [];
  for (let index = 0; index < given.length; index += 1) {
    const argument = given[index] ?? "";
    if (argument === "--") {
      files.push(...given.slice(index + 1));
      break;
    }
    if (argument === "--help" || argument === "-h") return "help";
    if (argument === "--json") json = true;
    else if (argument === "--hit" || argument.startsWith("--hit=")) {
      const separate = argument === "--hit";
      const text = separate ? given[index + 1] : argument.slice("--hit=".length);
      if (separate) index += 1;
      hit = parseHit(text ?? "");
      if (hit === null) {
        return {
          ok: false,
          message: `--hit takes a mass in kg and a speed in m/s, such as 250,2, not “${text ?? ""}”.`,
        };
      }
    } else if (argument.startsWith("-") && argument !== "-") {
      return { ok: false, message: `The option ${argument} is not known.` };
    } else files.push(argument);
  }
  if (files.length === 0) return { ok: false, message: "No file is given." };
  return { ok: true, value: { json, hit, files } };
}

function parseHit(text: string): HitAsked | null {
  const found = /^\s*(\d+(?:\.\d+)?)\s*,\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (found === null) return null;
  const massKg = Number(found[1]);
  const speedMPerS = Number(found[2]);
  return massKg > 0 && speedMPerS > 0 ? { massKg, speedMPerS } : null;
}

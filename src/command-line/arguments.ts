import { optionsIn, type Parsed } from "./options.ts";

/** What was asked for on the command line. */
export interface AssessArguments {
  readonly json: boolean;
  readonly samples: number | null;
  /** The parts library to choose stops and spacers from; null: the fitted build in every class. */
  readonly pack: string | null;
  readonly files: readonly string[];
}

export const usage = `Assess fitment checks: does the bump stop fit the vehicle as it stands?

  npm run -s assess -- [--json] [--samples N] [--pack FILE] FILE…

  --json        an array with one element for each file, in the order given
  --samples N   draws of the Monte Carlo, a whole number from 10 000 to 10 000 000 (else 20 000)
  --pack FILE   the parts library whose stops and spacers may be prescribed (else the fitted stop in
                every stiffness class, with spacers of 5 to 60 mm)
  --help        this text

A file that can't be read gives its error in its place, the others are still assessed, and the exit
status is 1. It is 2 when the command itself can't be understood.`;

const samplesAllowed = [10_000, 10_000_000] as const;

export function parseArguments(given: readonly string[]): Parsed<AssessArguments> | "help" {
  const found = optionsIn(given, { switches: ["--json"], options: ["--samples", "--pack"] });
  if (found === "help" || !found.ok) return found;
  const { switches, options, files } = found.value;
  const text = options.get("--samples");
  const samples = parseSamples(text);
  if (samples === null && options.has("--samples")) {
    const instead = text === undefined ? "nothing" : `“${text}”`;
    return {
      ok: false,
      message: `--samples takes a whole number from 10 000 to 10 000 000, not ${instead}.`,
    };
  }
  const pack = options.get("--pack");
  if (!pack && options.has("--pack")) {
    return { ok: false, message: "--pack takes the file of a parts library." };
  }
  return { ok: true, value: { json: switches.has("--json"), samples, pack: pack ?? null, files } };
}

function parseSamples(text: string | undefined): number | null {
  if (text === undefined || !/^\d{1,12}$/.test(text)) return null;
  const number = Number(text);
  const [least, most] = samplesAllowed;
  return number >= least && number <= most ? number : null;
}

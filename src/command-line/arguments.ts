/** What was asked for on the command line. */
export interface AssessArguments {
  readonly json: boolean;
  readonly samples: number | null;
  /** The reference pack to choose stops and spacers from; null: the fitted build in every class. */
  readonly pack: string | null;
  readonly files: readonly string[];
}

export type ParsedArguments =
  | { readonly ok: true; readonly value: AssessArguments }
  | { readonly ok: false; readonly message: string };

export const usage = `Assess fitment checks: does the bump stop fit the vehicle as it stands?

  npm run -s assess -- [--json] [--samples N] [--pack FILE] FILE…

  --json        an array with one element for each file, in the order given
  --samples N   draws of the Monte Carlo, a whole number from 10 000 to 10 000 000 (else 20 000)
  --pack FILE   the reference pack whose stops and spacers may be prescribed (else the fitted stop in
                every stiffness class, with spacers of 5 to 60 mm)
  --help        this text

A file that can't be read gives its error in its place, the others are still assessed, and the exit
status is 1. It is 2 when the command itself can't be understood.`;

const samplesAllowed = [10_000, 10_000_000] as const;

/** `--samples` and `--pack` take the next argument or what follows "="; everything after "--" is a file. */
export function parseArguments(given: readonly string[]): ParsedArguments | "help" {
  let json = false;
  let samples: number | null = null;
  let pack: string | null = null;
  const files: string[] = [];
  for (let index = 0; index < given.length; index += 1) {
    const argument = given[index] ?? "";
    if (argument === "--") {
      files.push(...given.slice(index + 1));
      break;
    }
    if (argument === "--help" || argument === "-h") return "help";
    if (argument === "--json") {
      json = true;
    } else if (argument === "--samples" || argument.startsWith("--samples=")) {
      const separate = argument === "--samples";
      const text = separate ? given[index + 1] : argument.slice("--samples=".length);
      if (separate) index += 1;
      const number = parseSamples(text);
      if (number === null) {
        const found = text === undefined ? "nothing" : `“${text}”`;
        return {
          ok: false,
          message: `--samples takes a whole number from 10 000 to 10 000 000, not ${found}.`,
        };
      }
      samples = number;
    } else if (argument === "--pack" || argument.startsWith("--pack=")) {
      const separate = argument === "--pack";
      const file = separate ? given[index + 1] : argument.slice("--pack=".length);
      if (separate) index += 1;
      if (!file) return { ok: false, message: "--pack takes the file of a reference pack." };
      pack = file;
    } else if (argument.startsWith("-") && argument !== "-") {
      return { ok: false, message: `The option ${argument} is not known.` };
    } else {
      files.push(argument);
    }
  }
  if (files.length === 0) return { ok: false, message: "No file is given." };
  return { ok: true, value: { json, samples, pack, files } };
}

function parseSamples(text: string | undefined): number | null {
  if (text === undefined || !/^\d{1,12}$/.test(text)) return null;
  const number = Number(text);
  const [least, most] = samplesAllowed;
  return number >= least && number <= most ? number : null;
}

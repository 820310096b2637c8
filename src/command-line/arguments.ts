import * as messages from "../words/compiled/command-line.ts";
import { optionsIn, type Parsed } from "./options.ts";

/** What was asked for on the command line. */
export interface AssessArguments {
  readonly json: boolean;
  readonly samples: number | null;
  /** The parts library to choose stops and spacers from; null: the fitted build in every class. */
  readonly pack: string | null;
  readonly files: readonly string[];
}

export const usage = messages.assessFitmentChecksDoes;

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
      message: messages.samplesTakesWholeNumber({ instead }),
    };
  }
  const pack = options.get("--pack");
  if (!pack && options.has("--pack")) {
    return { ok: false, message: messages.packTakesFileOf };
  }
  return { ok: true, value: { json: switches.has("--json"), samples, pack: pack ?? null, files } };
}

function parseSamples(text: string | undefined): number | null {
  if (text === undefined || !/^\d{1,12}$/.test(text)) return null;
  const number = Number(text);
  const [least, most] = samplesAllowed;
  return number >= least && number <= most ? number : null;
}

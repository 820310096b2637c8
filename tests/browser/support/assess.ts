import { execFile } from "node:child_process";
import { promisify } from "node:util";

const execute = promisify(execFile);

export interface PrintedAnswer {
  readonly id: string;
  readonly verdict: "ok" | "care" | "no" | "unsure";
  readonly corners: readonly {
    readonly side: string;
    readonly [figure: string]: unknown;
  }[];
}

/** `npm run -s assess -- --json` on one file, as a person would run it. */
export async function assessFile(file: string): Promise<PrintedAnswer> {
  const { stdout } = await execute("npm", ["run", "-s", "assess", "--", "--json", file], {
    maxBuffer: 1e8,
  });
  const [answer] = JSON.parse(stdout) as PrintedAnswer[];
  if (!answer) throw new Error("assess printed no answer");
  return answer;
}

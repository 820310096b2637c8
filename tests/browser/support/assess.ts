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

/** `npm run -s assess -- --json` on some files, as a person would run it: the answers in their order. */
export async function assessFiles(files: readonly string[]): Promise<readonly PrintedAnswer[]> {
  const { stdout } = await execute("npm", ["run", "-s", "assess", "--", "--json", ...files], {
    maxBuffer: 1e8,
  });
  const answers = JSON.parse(stdout) as PrintedAnswer[];
  if (answers.length !== files.length) throw new Error("assess did not print an answer for each");
  return answers;
}

export async function assessFile(file: string): Promise<PrintedAnswer> {
  const [answer] = await assessFiles([file]);
  if (!answer) throw new Error("assess printed no answer");
  return answer;
}

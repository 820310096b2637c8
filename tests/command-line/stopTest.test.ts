import { execFile } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parseStopTest } from "../../src/command-line/stopTestArguments.ts";
import type { PrintedTest } from "../../src/command-line/stopTestJson.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));
const cycles = join(project, "demo-data", "tests", "tall-firm-cycles.csv");
const rows = join(project, "demo-data", "tests", "tall-firm-rows.csv");
const patience = 120_000;

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "stopfit-stop-test-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The command as a person types it. */
function stopTest(...given: readonly string[]): Promise<{ status: number; stdout: string }> {
  return new Promise((resolve) => {
    execFile(
      "npm",
      ["--prefix", project, "run", "-s", "stop-test", "--", ...given],
      { cwd: folder },
      (error, stdout) => resolve({ status: Number(error?.code ?? 0), stdout }),
    );
  });
}

interface Printed {
  readonly file: string;
  readonly error?: string;
  readonly tests?: readonly PrintedTest[];
}

describe("stop-test --json", () => {
  it(
    "prints each file in its order: curve, parts, their ±, remarks, the hit; a bad file as its error",
    async () => {
      writeFileSync(join(folder, "words.csv"), "no numbers here\nat all\n");
      const { status, stdout } = await stopTest(
        "--json",
        "--hit",
        "60,1.5",
        cycles,
        "words.csv",
        rows,
      );
      const printed: readonly Printed[] = JSON.parse(stdout);
      expect(status).toBe(1);
      expect(printed.map(({ file }) => file)).toEqual([cycles, "words.csv", rows]);
      expect(printed[1]?.error).toMatch(/^No row of this file names its columns/);
      const timed = printed[0]?.tests?.[0];
      expect(Object.keys(timed ?? {}).sort()).toEqual(
        [
          "branches",
          "curve",
          "damping",
          "doubt",
          "hit",
          "leftOut",
          "remarks",
          "restLoss",
          "staticShare",
          "testedAtSpeed",
        ].sort(),
      );
      // The demo file is that of a stop with 6 % of rest loss.
      expect(Math.abs((timed?.restLoss ?? 0) - 0.06)).toBeLessThan(0.005);
      expect(timed?.testedAtSpeed).toBe(true);
      expect(timed?.branches.length).toBeGreaterThan(0);
      expect(timed?.doubt.restLoss).toBeGreaterThan(0);
      expect(timed?.hit?.energyInJ).toBeCloseTo((60 * 1.5 ** 2) / 2, 2);
      expect(timed?.remarks.join(" ")).toMatch(/checked on simulated stops/);
      const listed = printed[2]?.tests?.[0];
      expect(listed?.staticShare).toBeNull();
      expect(listed?.branches).toEqual([]);
      expect(Math.abs((listed?.restLoss ?? 0) - 0.05)).toBeLessThan(0.005);
      expect(stdout).not.toMatch(/NaN|Infinity/);
    },
    patience,
  );
});

describe("what was typed", () => {
  it("is understood, or told in a sentence", () => {
    expect(parseStopTest(["--hit=60,1.5", "a.csv"])).toEqual({
      ok: true,
      value: { json: false, hit: { massKg: 60, speedMPerS: 1.5 }, files: ["a.csv"] },
    });
    expect(parseStopTest(["--json", "--", "--odd"])).toMatchObject({
      value: { json: true, hit: null, files: ["--odd"] },
    });
    for (const wrong of [
      ["--hit", "60", "a"],
      ["--hit", "0,2", "a"],
      ["--hit"],
      ["--fast", "a"],
      [],
    ]) {
      expect(parseStopTest(wrong)).toMatchObject({ ok: false });
    }
    expect(parseStopTest(["-h"])).toBe("help");
  });
});

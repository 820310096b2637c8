import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { launchChromium } from "../browser/support/phone.ts";
import { Site } from "../browser/support/site.ts";
import { writeTestFile } from "../browser/support/testFile.ts";
import { trueStops } from "../support/testMachine/designs.ts";
import { ramp, sequence, sine } from "../support/testMachine/motions.ts";
import { measure } from "../support/testMachine/testMachine.ts";
import { measuredPhone } from "./measuredPhone.ts";
import { processorTimes } from "./processorTimes.ts";

/*
 * npm run test-import: how long a test file of 1,000,000 rows takes from its choice to its figures on the
 * screen, the processor time of its worker, which a busy machine does not change, and that of the longest
 * task of the page's main thread meanwhile. STOPFIT_DIST
 * names the build.
 */

const rows = 1_000_000;
const runs = 3;

/** The same rows as time, depth and force: ramp and cycles of a stop with all its parts, at 5 kHz. */
function writeTimedFile(): string {
  const stop = trueStops.everything;
  if (stop === undefined) throw new Error("no such stop");
  const samplesPerS = 5000;
  const block = (speed: number) => sine(0, 40, speed, Math.round(speed / 8));
  const { timeS, depthMm, forceN } = measure(
    stop,
    sequence([...ramp(0, 45, 0.68), ...[50, 150, 300, 500].map(block)]),
    { samplesPerS, whiteN: 15, whiteMm: 0.005 },
  );
  const lines = ["Time [s],Depth [mm],Force [N]"];
  for (let row = 0; row < rows && row < timeS.length; row++) {
    const [t = 0, x = 0, f = 0] = [timeS[row], depthMm[row], forceN[row]];
    lines.push(`${t.toFixed(4)},${x.toFixed(3)},${f.toFixed(1)}`);
  }
  const path = join(mkdtempSync(join(tmpdir(), "stopfit-timed-")), "bench.csv");
  writeFileSync(path, `${lines.join("\n")}\n`);
  return path;
}

const files = [
  ["depth, speed, force", writeTestFile(rows)],
  ["time, depth, force", writeTimedFile()],
] as const;
const site = new Site();
const browser = await launchChromium();
try {
  await site.publish(process.env.STOPFIT_DIST ?? "dist");
  for (const [what, file] of files) {
    for (let run = 1; run <= runs; run++) {
      const device = await measuredPhone(browser);
      const page = await device.newPage();
      page.setDefaultTimeout(300_000);
      await page.goto(`${site.address}#/pack/tests/tall-firm`);
      await page.getByRole("heading", { level: 1, name: "Import a test" }).waitFor();
      let seconds = Number.NaN;
      const { longestMs, workersMs } = await processorTimes(browser, page, async () => {
        const started = performance.now();
        await page.getByLabel("Test file").setInputFiles(file);
        await page.getByRole("heading", { name: "bench.csv" }).waitFor();
        seconds = (performance.now() - started) / 1000;
      });
      const read = await page.getByText(/rows; columns/).textContent();
      console.log(
        `${what}: ${seconds.toFixed(2)} s, worker ${(workersMs / 1000).toFixed(2)} s of processor time, longest task ${longestMs.toFixed(0)} ms (${read?.trim().slice(0, 40)})`,
      );
      await device.close();
    }
  }
} finally {
  await browser.close();
  await site.close();
  for (const [, file] of files) rmSync(dirname(file), { recursive: true });
}

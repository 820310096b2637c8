import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type {} from "vitest";
import type { TestProject } from "vitest/node";
import { runTool } from "../../../src/tooling/run.mjs";

declare module "vitest" {
  export interface ProvidedContext {
    /** Folder of the production build under test. */
    dist: string;
    /** Folder of a later release of the same app. */
    laterDist: string;
  }
}

async function buildInto(folder: string, release: string): Promise<void> {
  const code = await runTool(
    "vite/bin/vite.js",
    ["build", "--logLevel", "warn", "--outDir", folder],
    {
      env: { ...process.env, VITE_DEMO: "1", VITE_RELEASE: release },
    },
  );
  if (code !== 0) throw new Error("The build under test failed; its message is above.");
}

/** Builds once for all browser tests; STOPFIT_DIST names a build that is there already. */
export default async function build(project: TestProject): Promise<() => void> {
  const work = mkdtempSync(join(tmpdir(), "stopfit-browser-"));
  const dist = process.env.STOPFIT_DIST ?? join(work, "dist");
  const laterDist = join(work, "later");
  if (process.env.STOPFIT_DIST === undefined) await buildInto(dist, "0.1.0");
  await buildInto(laterDist, "0.1.0-later");
  project.provide("dist", dist);
  project.provide("laterDist", laterDist);
  return () => rmSync(work, { recursive: true, force: true });
}

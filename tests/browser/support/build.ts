import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type {} from "vitest";
import type { TestProject } from "vitest/node";
import { version } from "../../../package.json";
import { runTool } from "../../../src/tooling/run.mjs";

declare module "vitest" {
  export interface ProvidedContext {
    /** Folder of the production build under test. */
    dist: string;
    /** Folder of a later release of the same app. */
    laterDist: string;
    /** Folder of the app in the language for tests, once ensurePseudoDist() was there. */
    pseudoDist: string;
  }
}

export const laterRelease = `${version}-later`;

/** `more` are variables of the build beside those of every one. */
export async function buildInto(
  folder: string,
  release: string,
  more: { readonly [name: string]: string } = {},
): Promise<void> {
  const own = { NODE_ENV: "production", VITE_DEMO: "1", VITE_RELEASE: release };
  const env = { ...process.env, ...own, ...more };
  const args = ["build", "--logLevel", "warn", "--outDir", folder];
  const code = await runTool("vite/bin/vite.js", args, { env });
  if (code !== 0) throw new Error("The build under test failed; its message is above.");
}

/** Made where it is not at hand: only the tests in that language need it. */
export async function ensurePseudoDist(folder: string): Promise<string> {
  if (existsSync(join(folder, "index.html"))) return folder;
  await buildInto(folder, version, { STOPFIT_WORDS: "pseudo" });
  return folder;
}

/**
 * Builds once for all browser tests. STOPFIT_DIST, STOPFIT_LATER_DIST and STOPFIT_PSEUDO_DIST name builds
 * at hand.
 */
export default async function build(project: TestProject): Promise<() => void> {
  const work = mkdtempSync(join(tmpdir(), "stopfit-browser-"));
  const dist = process.env.STOPFIT_DIST ?? join(work, "dist");
  const laterDist = process.env.STOPFIT_LATER_DIST ?? join(work, "later");
  if (process.env.STOPFIT_DIST === undefined) await buildInto(dist, version);
  if (process.env.STOPFIT_LATER_DIST === undefined) await buildInto(laterDist, laterRelease);
  project.provide("dist", dist);
  project.provide("laterDist", laterDist);
  project.provide("pseudoDist", process.env.STOPFIT_PSEUDO_DIST ?? join(work, "pseudo"));
  return () => rmSync(work, { recursive: true, force: true });
}

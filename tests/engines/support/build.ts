import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { version } from "../../../package.json";
import { buildInto } from "../../browser/support/build.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** A folder for what one file of these tests leaves to the other. */
    shared: string;
  }
}

/** One build for all tests of the other engines; STOPFIT_DIST names one at hand. */
export default async function build(project: TestProject): Promise<() => void> {
  const work = mkdtempSync(join(tmpdir(), "stopfit-engines-"));
  const dist = process.env.STOPFIT_DIST ?? join(work, "dist");
  if (process.env.STOPFIT_DIST === undefined) await buildInto(dist, version);
  project.provide("dist", dist);
  project.provide("shared", work);
  return () => rmSync(work, { recursive: true, force: true });
}

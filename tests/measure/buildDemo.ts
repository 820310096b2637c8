import { runTool } from "../../src/tooling/run.mjs";

/** A production build with the demo checks. */
export async function buildDemoInto(dist: string): Promise<void> {
  const env = { ...process.env, NODE_ENV: "production", VITE_DEMO: "1" };
  const code = await runTool(
    "vite/bin/vite.js",
    ["build", "--logLevel", "error", "--outDir", dist],
    { env },
  );
  if (code !== 0) throw new Error("The build failed; its message is above.");
}

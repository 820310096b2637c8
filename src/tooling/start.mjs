import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureDependencies } from "./dependencies.mjs";
import { runTool } from "./run.mjs";
import { createStaticServer, listenLocally } from "./serve.mjs";

const usualPort = 4173;

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

process.chdir(resolve(dirname(fileURLToPath(import.meta.url)), "../.."));

const wished = process.env.PORT;
const port = wished === undefined || wished === "" ? usualPort : Number(wished);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  stop(`PORT is "${wished}"; it must be a whole number from 0 to 65535.`);
}

const trouble = await ensureDependencies();
if (trouble) stop(trouble);

console.log("Building …");
// Demo checks are of the demo's vehicles: a maker's app is looked at without them.
const environment = process.env.STOPFIT_PACK ? process.env : { ...process.env, VITE_DEMO: "1" };
const code = await runTool("vite/bin/vite.js", ["build", "--logLevel", "warn"], {
  env: environment,
});
if (code !== 0) stop("The build failed; see the message above.");

const server = createStaticServer("dist");
try {
  const used = await listenLocally(server, port, wished === undefined || wished === "");
  console.log(`\nStopfit runs at http://localhost:${used}/  (Ctrl+C stops it)`);
} catch (error) {
  stop(`Port ${port} cannot be used: ${error.message}. Set PORT to another one.`);
}
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.on(signal, () => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  });
}

import { spawn } from "node:child_process";

/** Runs a command with its output on this terminal; resolves with its exit code, never rejects. */
export function run(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      stdio: ["ignore", "inherit", "inherit"],
      shell: process.platform === "win32",
      ...options,
    });
    child.on("error", (error) => {
      console.error(`${command}: ${error.message}`);
      resolve(127);
    });
    child.on("exit", (code) => resolve(code ?? 1));
  });
}

/** Runs a tool of the project's own, node_modules/<path>, with this Node. */
export function runTool(path, args, options = {}) {
  return run(process.execPath, [`node_modules/${path}`, ...args], { shell: false, ...options });
}

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

/**
 * The same with its output held back until it has ended, for tools that run beside each other; also a
 * tool of the project itself, src/<path>.
 */
export function runToolHeld(path, args, options = {}) {
  return new Promise((resolve) => {
    const file = path.startsWith("src/") ? path : `node_modules/${path}`;
    const child = spawn(process.execPath, [file, ...args], {
      stdio: ["ignore", "pipe", "pipe"],
      ...options,
    });
    let output = "";
    const add = (data) => {
      output += data;
    };
    child.stdout.on("data", add);
    child.stderr.on("data", add);
    child.on("error", (error) => resolve({ code: 127, output: `${path}: ${error.message}\n` }));
    child.on("close", (code) => resolve({ code: code ?? 1, output }));
  });
}

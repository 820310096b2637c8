import { debianVersion, installDebian } from "./debianPackages.mjs";
import { canRun, installedProgram } from "./installedProgram.mjs";

const usualPlaces = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome-stable",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

/** The browser named by CHROMIUM_PATH, else the first in a usual place, else null. */
export function findChromium(environment = process.env, places = usualPlaces, runs = canRun) {
  return installedProgram(environment.CHROMIUM_PATH, places, runs);
}

const shellPlaces = ["/usr/bin/chromium-headless-shell"];

/**
 * Chromium without any window of its own, whose pages cost a quarter less: the one named by CHROMIUM_SHELL_PATH,
 * else Debian's; null beside a browser named by CHROMIUM_PATH, and where there is none.
 */
export function findHeadlessShell(environment = process.env, places = shellPlaces, runs = canRun) {
  const { CHROMIUM_SHELL_PATH: named, CHROMIUM_PATH: browser } = environment;
  return installedProgram(named, browser ? [] : places, runs);
}

/** Finds the shell, installing Debian's of the browser's own version where that is possible; else null. */
export async function ensureHeadlessShell() {
  const found = findHeadlessShell();
  if (found || process.env.CHROMIUM_PATH || process.env.CHROMIUM_SHELL_PATH) return found;
  const version = debianVersion("chromium");
  if (version) await installDebian([`chromium-headless-shell=${version}`], shellMs);
  return findHeadlessShell();
}

const installMs = 300_000;
const shellMs = 120_000;

/** Finds Chromium, installing Debian's where that is possible: { path } or { trouble }. */
export async function ensureChromium() {
  const found = findChromium();
  if (found) return { path: found };
  if (process.env.CHROMIUM_PATH) {
    return { trouble: `CHROMIUM_PATH is "${process.env.CHROMIUM_PATH}", which cannot be run.` };
  }
  await installDebian(["chromium"], installMs);
  const installed = findChromium();
  if (installed) return { path: installed };
  return {
    trouble:
      "The browser tests need Chromium. Install it (Debian and Ubuntu: sudo apt-get install chromium) " +
      "or set CHROMIUM_PATH to a Chromium or Chrome program, then run npm test again.",
  };
}

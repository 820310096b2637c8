import { accessSync, constants } from "node:fs";
import { installDebian } from "./debianPackages.mjs";

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

function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The browser named by CHROMIUM_PATH, else the first in a usual place, else null. */
export function findChromium(environment = process.env, places = usualPlaces, runs = canRun) {
  const named = environment.CHROMIUM_PATH;
  if (named) return runs(named) ? named : null;
  return places.find(runs) ?? null;
}

const installMs = 300_000;

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

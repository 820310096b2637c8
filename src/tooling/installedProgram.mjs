import { accessSync, constants } from "node:fs";

export function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The program that `named` says, else the first in a usual place that can be run, else null. */
export function installedProgram(named, places, runs) {
  if (named) return runs(named) ? named : null;
  return places.find(runs) ?? null;
}

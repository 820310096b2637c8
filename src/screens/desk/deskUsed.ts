const key = "stopfit.desk";

/** Notes that checks were taken in here, so that the desk's code is at hand before it is opened again. */
export function markDeskUsed(): void {
  try {
    localStorage.setItem(key, "1");
  } catch {
    // Then it is fetched when it is opened.
  }
}

export function isDeskUsed(): boolean {
  try {
    return localStorage.getItem(key) !== null;
  } catch {
    return false;
  }
}

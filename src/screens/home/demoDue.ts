/** Under this name the browser keeps that the demo has come. */
export const demoKey = "stopfit.demo";

/** A build with the demo loads it on the first visit, and not again once it was deleted. */
export function isDemoDue(): boolean {
  if (import.meta.env.VITE_DEMO !== "1") return false;
  try {
    return localStorage.getItem(demoKey) === null;
  } catch {
    return false;
  }
}

export function markDemoLoaded(): void {
  try {
    localStorage.setItem(demoKey, "loaded");
  } catch {
    // Refused: the demo comes by its button.
  }
}

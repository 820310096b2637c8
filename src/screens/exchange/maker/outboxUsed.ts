const key = "stopfit.outbox";

/** Notes that something was sent to a desk, so that phones without that never look for answers. */
export function markOutboxUsed(): void {
  try {
    localStorage.setItem(key, "1");
  } catch {
    // Then it is looked for while this page is open.
  }
}

export function isOutboxUsed(): boolean {
  try {
    return localStorage.getItem(key) !== null;
  } catch {
    return false;
  }
}

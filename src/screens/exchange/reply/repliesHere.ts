const key = "stopfit.replies";

/** Notes that a reply was kept, so that phones without any never look for one. */
export function markReplies(): void {
  try {
    localStorage.setItem(key, "1");
  } catch {
    // The reply's own screen is still shown.
  }
}

export function hasReplies(): boolean {
  try {
    return localStorage.getItem(key) !== null;
  } catch {
    return false;
  }
}

const key = "stopfit.desk.name";

/** Who decides here: remembered in this browser. */
export function deskName(): string {
  try {
    return localStorage.getItem(key) ?? "";
  } catch {
    return "";
  }
}

export function keepDeskName(name: string): void {
  try {
    localStorage.setItem(key, name.trim());
  } catch {
    // Typed again next time.
  }
}

export interface TallerRoute {
  readonly screen: "taller";
  readonly stage: "questions" | "answer";
}

export const tallerHref = "#/taller";
export const tallerAnswerHref = "#/taller/answer";

/** The place of an address's parts, or null where it is another one. */
export function readTallerRoute(parts: readonly (string | null)[]): TallerRoute | null {
  if (parts[0] !== "taller" || parts.length > 2) return null;
  if (parts.length === 1) return { screen: "taller", stage: "questions" };
  return parts[1] === "answer" ? { screen: "taller", stage: "answer" } : null;
}

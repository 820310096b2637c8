export interface QuickCheckRoute {
  readonly screen: "quickCheck";
  readonly stage: "questions" | "answer";
}

export const quickCheckHref = "#/taller";
export const quickCheckAnswerHref = "#/taller/answer";

/** The place of an address's parts, or null where it is another one. */
export function readQuickCheckRoute(parts: readonly (string | null)[]): QuickCheckRoute | null {
  if (parts[0] !== "taller" || parts.length > 2) return null;
  if (parts.length === 1) return { screen: "quickCheck", stage: "questions" };
  return parts[1] === "answer" ? { screen: "quickCheck", stage: "answer" } : null;
}

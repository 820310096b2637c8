/** Asks for the other of two arms. */
export const otherArmWords = {
  lead: "The wheel does not rise exactly as the arm's outer joint does: the other arm tilts it. Four more readings make the answer sharper, and two that may be left out. Nothing is jacked.",
  legend: "Measure the other arm too?",
} as const;

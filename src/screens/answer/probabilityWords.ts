/** A probability in words; the words change where the decisions do (0.95 and 0.05) and between. */
export function probabilityWords(probability: number): string {
  if (probability >= 0.999) return "almost certain";
  if (probability >= 0.95) return "very likely";
  if (probability >= 0.75) return "likely";
  if (probability > 0.25) return "could go either way";
  if (probability > 0.05) return "unlikely";
  if (probability > 0.001) return "very unlikely";
  return "almost ruled out";
}

/** Never "100 %" or "0 %": readings do not give certainty. */
export function probabilityNumber(probability: number): string {
  if (probability > 0.999) return "over 99.9\u00a0%";
  if (probability < 0.001) return "under 0.1\u00a0%";
  return `${Number((100 * probability).toFixed(1))}\u00a0%`;
}

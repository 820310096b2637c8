/** A long placeholder is written smaller, so that all of it shows. */
export function placeholderClass(text: string): string {
  return text.length > 30 ? "long-placeholder" : "";
}

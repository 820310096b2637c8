import type { Page } from "playwright-core";

export interface Appearance {
  readonly theme: "light" | "dark" | "sun";
  readonly text: "usual" | "large" | "largest";
}

/** Every theme, and the largest words in the two that are furthest apart. */
const everyAppearance: readonly Appearance[] = [
  { theme: "light", text: "usual" },
  { theme: "dark", text: "usual" },
  { theme: "sun", text: "usual" },
  { theme: "sun", text: "largest" },
  { theme: "dark", text: "largest" },
];

/** Rules of axe-core by which one appearance can fail where another does not: colours and sizes. */
export const rulesOfAppearance = [
  "color-contrast",
  "link-in-text-block",
  "scrollable-region-focusable",
] as const;

/** The page as it stands in each appearance in turn, and then as it was. */
export async function inEveryAppearance(
  page: Page,
  look: (appearance: Appearance) => Promise<void>,
  appearances: readonly Appearance[] = everyAppearance,
): Promise<void> {
  const show = (wanted: { readonly theme?: string; readonly text?: string }) =>
    page.evaluate(({ theme, text }) => {
      const { dataset } = document.documentElement;
      const before = { theme: dataset.theme ?? "", text: dataset.text ?? "" };
      dataset.theme = theme ?? "";
      dataset.text = text ?? "";
      return before;
    }, wanted);
  let before: { theme: string; text: string } | null = null;
  for (const appearance of appearances) {
    const replaced = await show(appearance);
    before ??= replaced;
    await look(appearance);
  }
  if (before !== null) await show(before);
}

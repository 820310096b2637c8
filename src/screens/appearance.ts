const themes = ["phone", "light", "dark", "sun"] as const;
/** "phone" is light or dark as the phone is. */
export type Theme = (typeof themes)[number];

const textSizes = ["usual", "large", "largest"] as const;
export type TextSize = (typeof textSizes)[number];

export function isTheme(value: unknown): value is Theme {
  return (themes as readonly unknown[]).includes(value);
}

export function isTextSize(value: unknown): value is TextSize {
  return (textSizes as readonly unknown[]).includes(value);
}

/** --paper of tokens.css: the browser's own bar is coloured like the page. */
const papers = { light: "#edf1ef", dark: "#0e1413", sun: "#ffffff" } as const;

const darkWanted = "(prefers-color-scheme: dark)";

/** Puts theme and text size on the page's root, where tokens.css looks for them. */
export function showAppearance({
  theme,
  text,
}: {
  readonly theme: Theme;
  readonly text: TextSize;
}): void {
  const root = document.documentElement;
  const shown = theme === "phone" ? (matchMedia(darkWanted).matches ? "dark" : "light") : theme;
  root.dataset.theme = shown;
  root.dataset.text = text;
  for (const bar of document.querySelectorAll('meta[name="theme-color"]')) {
    bar.setAttribute("content", papers[shown]);
  }
}

/** Calls back when the phone turns light or dark. */
export function onPhoneTheme(listener: () => void): void {
  matchMedia(darkWanted).addEventListener("change", listener);
}

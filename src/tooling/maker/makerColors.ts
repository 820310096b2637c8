/** Relative luminance of #rrggbb, 0 … 1. @source WCAG 2.2, definition of relative luminance */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = channelsOf(color).map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast of two colors, 1 … 21. @source WCAG 2.2, definition of contrast ratio */
export function contrast(first: string, second: string): number {
  const [low = 0, high = 0] = [luminance(first), luminance(second)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

function channelsOf(color: string): readonly number[] {
  return [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
}

/** `share` of the way from one color to another. */
function mixed(from: string, to: string, share: number): string {
  const other = channelsOf(to);
  const channels = channelsOf(from).map((channel, place) =>
    Math.round(channel + share * ((other[place] ?? 0) - channel)),
  );
  return `#${channels.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}

interface Ground {
  readonly paper: string;
  readonly surface: string;
  /** What the color is brought to until it holds. */
  readonly toward: string;
  readonly least: number;
  readonly wash: number;
}

/** The grounds of styles/tokens.css, and the contrast that words must have there. */
const grounds = {
  light: { paper: "#edf1ef", surface: "#ffffff", toward: "#000000", least: 4.5, wash: 0.88 },
  dark: { paper: "#0e1413", surface: "#18211f", toward: "#ffffff", least: 4.5, wash: 0.84 },
  sun: { paper: "#ffffff", surface: "#ffffff", toward: "#000000", least: 7, wash: 0.92 },
} as const satisfies { readonly [theme: string]: Ground };

type ThemeName = keyof typeof grounds;

export interface Accent {
  readonly accent: string;
  /** Words on it. */
  readonly ink: string;
  readonly wash: string;
}

function accentOn(color: string, { surface, wash, toward }: Ground): Accent {
  const ink = toward === "#ffffff" ? mixed(color, "#000000", 0.82) : "#ffffff";
  return { accent: color, ink, wash: mixed(color, surface, wash) };
}

function holds({ accent, ink, wash }: Accent, { paper, surface, least }: Ground): boolean {
  return (
    [paper, surface, wash].every((ground) => contrast(accent, ground) >= least) &&
    contrast(ink, accent) >= least
  );
}

function nearest(color: string, ground: Ground): Accent {
  for (let step = 0; step <= 50; step += 1) {
    const accent = accentOn(mixed(color, ground.toward, step / 50), ground);
    if (holds(accent, ground)) return accent;
  }
  return accentOn(ground.toward, ground);
}

/**
 * A maker's color for all three themes, brought lighter or darker until words in it and on it can be
 * read; of the light theme it is taken as it is, or refused with the nearest one that can.
 */
export function accentsOf(
  color: string,
):
  | { readonly ok: true; readonly accents: { readonly [Theme in ThemeName]: Accent } }
  | { readonly ok: false; readonly sentence: string } {
  const light = accentOn(color.toLowerCase(), grounds.light);
  if (!holds(light, grounds.light)) {
    const ratio = contrast(color, grounds.light.paper).toFixed(1);
    return {
      ok: false,
      sentence: `The color ${color} has a contrast of ${ratio} : 1 to the page, and words need 4.5 : 1. The nearest one that has it is ${nearest(color, grounds.light).accent}.`,
    };
  }
  return {
    ok: true,
    accents: { light, dark: nearest(color, grounds.dark), sun: nearest(color, grounds.sun) },
  };
}

const selectors: { readonly [Theme in ThemeName]: string } = {
  light: ":root",
  dark: '[data-theme="dark"]',
  sun: '[data-theme="sun"]',
};

/** styles/tokens.css with these accents in place of its own. */
export function withAccents(
  css: string,
  accents: { readonly [Theme in ThemeName]: Accent },
): string {
  let text = css;
  for (const theme of Object.keys(selectors) as ThemeName[]) {
    const start = text.indexOf(`${selectors[theme]} {`);
    const end = text.indexOf("}", start);
    const { accent, ink, wash } = accents[theme];
    const block = text
      .slice(start, end)
      .replace(/--accent: [^;]+;/, `--accent: ${accent};`)
      .replace(/--accent-ink: [^;]+;/, `--accent-ink: ${ink};`)
      .replace(/--accent-wash: [^;]+;/, `--accent-wash: ${wash};`);
    text = `${text.slice(0, start)}${block}${text.slice(end)}`;
  }
  return text;
}

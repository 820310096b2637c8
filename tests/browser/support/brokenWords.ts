import type { Page } from "playwright-core";

/** Words that begin on one line and end on another, other than at a hyphen or a slash of their own. */
export function brokenWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const broken: string[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const parent = node.parentElement;
      if (!parent || parent.closest("svg, script, style, .unseen")) continue;
      for (const word of (node.textContent ?? "").matchAll(/[\p{L}\p{N}.,]{2,}/gu)) {
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const tops = [...range.getClientRects()]
          .filter(({ width, height }) => width > 0 && height > 0)
          .map(({ top }) => Math.round(top));
        if (new Set(tops).size > 1) {
          const place = parent.closest("[class]")?.className ?? parent.tagName;
          broken.push(`“${word[0]}” in ${place}`);
        }
      }
    }
    return broken;
  });
}

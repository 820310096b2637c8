import { saveFile } from "../../sharing/saveFile.ts";

/**
 * The page as it stands, as one file that opens anywhere: where it can't be printed. Scripts and what
 * only serves the screen stay out.
 */
export function savePage(name: string): void {
  const styles = [...document.styleSheets]
    .flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText))
    .join("\n");
  const main = document.querySelector("main")?.outerHTML ?? "";
  const { theme, text } = document.documentElement.dataset;
  const page = `<!doctype html><html lang="en" data-theme="${theme ?? "light"}" data-text="${text ?? "usual"}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${name}</title><style>${styles}</style></head><body>${main}</body></html>`;
  saveFile(
    new File([page], `${name.toLowerCase().replace(/ /g, "-")}.html`, { type: "text/html" }),
  );
}

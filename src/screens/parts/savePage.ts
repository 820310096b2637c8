import type { Fault } from "../../physics/outcome.ts";
import { saveFile } from "../../sharing/saveFile.ts";
import * as messages from "../../words/compiled/screens/parts.ts";

/**
 * The page as it stands, as one file that opens anywhere: where it can't be printed. Scripts and what
 * only serves the screen stay out. The fault where the person would not have it saved after all.
 */
export async function savePage(name: string): Promise<Fault | null> {
  const styles = [...document.styleSheets]
    .flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText))
    .join("\n");
  const main = document.querySelector("main")?.outerHTML ?? "";
  const { theme, text } = document.documentElement.dataset;
  const page = `<!doctype html><html lang="en" data-theme="${theme ?? "light"}" data-text="${text ?? "usual"}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${name}</title><style>${styles}</style></head><body>${main}</body></html>`;
  const file = `${name.toLowerCase().replace(/ /g, "-")}.html`;
  const isSaved = await saveFile(new File([page], file, { type: "text/html" }));
  return isSaved ? null : { code: "pageNotSaved", sentence: [messages.pageIsNotSaved] };
}

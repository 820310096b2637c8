import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds wrong with the page as it stands, by all its rules; the page must bypass its policy. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(source);
  return page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: typeof import("axe-core") }).axe;
    const { violations } = await axe.run(document, { resultTypes: ["violations"] });
    return violations.flatMap((violation) =>
      violation.nodes.map((node) => `${violation.id}: ${node.target.join(" ")}: ${violation.help}`),
    );
  });
}

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What axe-core finds wrong with the page as it stands, by all its rules or by those named; the page must
 * bypass its policy.
 */
export async function axeViolations(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(source);
  return page.evaluate(async (named) => {
    const axe = (globalThis as unknown as { axe: typeof import("axe-core") }).axe;
    const { violations } = await axe.run(document, {
      resultTypes: ["violations"],
      ...(named && { runOnly: { type: "rule", values: [...named] } }),
    });
    return violations.flatMap((violation) =>
      violation.nodes.map((node) => `${violation.id}: ${node.target.join(" ")}: ${violation.help}`),
    );
  }, rules);
}

import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { AnswerPage } from "./support/answerPage.ts";
import { inEveryAppearance, rulesOfAppearance } from "./support/appearances.ts";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { demoRecord } from "./support/everyStep.ts";
import type { Phone, PhoneOptions } from "./support/phone.ts";
import { screensOnSite } from "./support/screensOnSite.ts";
import { openStarted } from "./support/startedCheck.ts";

// The answer on a phone, in a desk's window and on paper.

const stage = screensOnSite();

async function answerTo(
  name: string,
  { inches = false, ...options }: PhoneOptions & { readonly inches?: boolean } = {},
): Promise<{ phone: Phone; page: Page }> {
  const phone = await stage.openPhone(options);
  const page = await phone.newPage();
  const list = await new CheckList(page).open(stage.address);
  if (inches) await list.useInches();
  await openStarted(page, stage.address, demoRecord(name), "answer");
  await new AnswerPage(page).complete();
  await page.waitForFunction(
    () => !/Working out|Trying stops/.test(document.querySelector("main")?.textContent ?? ""),
  );
  return { phone, page };
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where each of these stands on the page; absent: it is not shown. */
function boxesOf(page: Page, selectors: readonly string[]): Promise<{ [selector: string]: Box }> {
  return page.evaluate((all) => {
    const found: { [selector: string]: Box } = {};
    for (const selector of all) {
      const box = document.querySelector(selector)?.getBoundingClientRect();
      if (!box || box.height === 0) continue;
      const { left, right, top, bottom } = box;
      found[selector] = { left, right, top: top + scrollY, bottom: bottom + scrollY };
    }
    return found;
  }, selectors);
}

const sections = [
  ".side-force",
  ".side-impact",
  ".side-after",
  ".side-test",
  ".side-map",
  ".side-contacts",
];

it.each([
  ["arm-fits", false],
  ["foam-stop-tested", false],
  ["foam-stop-tested", true],
] as const)(
  "%s in a wide window, inches: %s: no half stands empty, nothing is cut off",
  async (name, inches) => {
    const { phone, page } = await answerTo(name, { width: 1280, height: 800, inches });
    const at = await boxesOf(page, [
      ...sections,
      ".side-charts",
      ".travel-drawn",
      ".travel-controls",
    ]);
    const [force, impact, after, map, contacts, whole] = [
      at[".side-force"],
      at[".side-impact"],
      at[".side-after"],
      at[".side-map"],
      at[".side-contacts"],
      at[".side-charts"],
    ];
    if (!force || !impact || !after || !map || !contacts || !whole)
      throw new Error("not all shown");
    expect(impact.left).toBeGreaterThan(force.right);
    expect(impact.top).toBe(force.top);
    expect([map.left, map.right]).toEqual([whole.left, whole.right]);
    // Two columns end within a sixth of their height of each other.
    const leftEnd = Math.max(after.bottom, contacts.top < map.top ? contacts.bottom : 0);
    const tallest = Math.max(leftEnd, impact.bottom) - force.top;
    expect(Math.abs(leftEnd - impact.bottom) / tallest).toBeLessThan(1 / 6);
    const [drawn, controls] = [at[".travel-drawn"], at[".travel-controls"]];
    if (!drawn || !controls) throw new Error("no travel view");
    expect(controls.left).toBeGreaterThan(drawn.right);
    expect(Math.abs(drawn.bottom - controls.bottom)).toBeLessThan(160);
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll("main .table-holder, main .chart, main .travel")]
        .filter((each) => each.scrollWidth > each.clientWidth)
        .map((each) => each.getAttribute("aria-label") ?? each.className),
    );
    expect(cut).toEqual([]);
    await inEveryAppearance(page, async ({ theme, text }) => {
      expect([theme, text, await axeViolations(page, rulesOfAppearance)]).toEqual([
        theme,
        text,
        [],
      ]);
    });
    phone.expectNoTrouble();
  },
  240_000,
);

it("where no more is known than the stop's force, it has the whole width", async () => {
  const { phone, page } = await answerTo("few-readings", { width: 1280, height: 800 });
  const at = await boxesOf(page, [...sections, ".side-charts"]);
  const { ".side-charts": whole, ".side-force": force } = at;
  expect(Object.keys(at)).toEqual([".side-force", ".side-charts"]);
  expect(force).toEqual(whole);
  phone.expectNoTrouble();
});

it("on a phone one stands below the other, in the order they are read", async () => {
  const { phone, page } = await answerTo("foam-stop-tested");
  const at = await boxesOf(page, sections);
  expect(Object.keys(at)).toEqual(sections);
  const boxes = Object.values(at);
  for (const [index, { left, top }] of boxes.entries()) {
    expect(left).toBe(boxes[0]?.left);
    expect(top).toBeGreaterThanOrEqual((index > 0 && boxes[index - 1]?.bottom) || 0);
  }
  phone.expectNoTrouble();
});

it("on paper: verdict, what to do and every caution, black on white, nothing to tap", async () => {
  const { phone, page } = await answerTo("foam-stop-tested", { colorScheme: "dark" });
  const cautions = page.locator(".cautions");
  await page.evaluate(() => {
    document.documentElement.dataset.theme = "dark";
    addEventListener("beforeprint", () => {
      document.title = [...document.querySelectorAll(".cautions")]
        .map((each) => `cautions open: ${each.closest("details")?.open}`)
        .join();
    });
  });
  const paper = (await page.pdf({ format: "Letter" })).toString("latin1");
  expect(paper.match(/\/Type\s*\/Page[^s]/g)?.length).toBeGreaterThan(0);
  expect(await page.title()).toBe("cautions open: true");
  expect(await cautions.isVisible()).toBe(false);

  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await expect.poll(() => cautions.isVisible()).toBe(true);
  for (const shown of [".on-paper", ".verdict h1", ".prescription", ".travel-pictures"]) {
    expect([shown, await page.locator(shown).first().isVisible()]).toEqual([shown, true]);
  }
  const left = await page.evaluate(() =>
    [...document.querySelectorAll("header, footer, button:not(.remeasure), input, nav")]
      .filter((each) => each.getClientRects().length > 0)
      .map((each) => each.textContent || each.outerHTML.slice(0, 80)),
  );
  expect(left).toEqual([]);
  const inks = await page.evaluate(() =>
    [".prescription", ".verdict-reason", ".cautions li", ".on-paper"].map(
      (each) => getComputedStyle(document.querySelector(each) ?? document.body).color,
    ),
  );
  expect(inks).toEqual(inks.map(() => "rgb(0, 0, 0)"));
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
  expect(await cautions.isVisible()).toBe(false);
  phone.expectNoTrouble();
});

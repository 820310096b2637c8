import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { openEverything } from "./support/controls.ts";
import { demoRecord, everyStep } from "./support/everyStep.ts";
import { screensOnSite } from "./support/screensOnSite.ts";

const stage = screensOnSite();

/** Where the list of steps beside a step has the one that is open. */
function stepInList(page: Page): Promise<"no list" | "in sight" | "out of sight"> {
  return page.evaluate(() => {
    const list = document.querySelector(".step-aside")?.getBoundingClientRect();
    const own = document
      .querySelector('.step-aside [aria-current="step"]')
      ?.getBoundingClientRect();
    if (!list || !own) return "no list";
    return own.top >= list.top - 1 && own.bottom <= list.bottom + 1 ? "in sight" : "out of sight";
  });
}

it("every step of a check on a damper's rod, and its answer, by night on a desk", async () => {
  const phone = await stage.openPhone({ colorScheme: "dark", width: 1280, height: 800 });
  let listed = 0;
  const page = await everyStep(
    phone,
    stage.address,
    demoRecord("damper-shaft"),
    async (shown, name) => {
      await stage.screens.look(shown, name);
      const place = await stepInList(shown);
      if (place === "in sight") listed++;
      if (place === "out of sight") stage.screens.wrong.push(`${name}: its place in the list`);
    },
  );
  expect(listed).toBeGreaterThan(20);
  await openEverything(page);
  await stage.screens.look(page, "damper answer opened");
  expect(stage.screens.seen.length).toBeGreaterThan(20);
  expect(stage.screens.wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);

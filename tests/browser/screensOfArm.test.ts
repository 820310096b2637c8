import { expect, it } from "vitest";
import { openEverything } from "./support/controls.ts";
import { demoRecord, everyStep } from "./support/everyStep.ts";
import { screensOnSite } from "./support/screensOnSite.ts";

const stage = screensOnSite();

it("every step of a check on an arm, and its answer, by day", async () => {
  const phone = await stage.openPhone();
  const page = await everyStep(
    phone,
    stage.address,
    demoRecord("arm-needs-taller"),
    stage.screens.look,
  );
  await stage.screens.look(page, "arm answer");
  await openEverything(page);
  await stage.screens.look(page, "arm answer opened");
  expect(stage.screens.seen.length).toBeGreaterThan(30);
  expect(stage.screens.wrong).toEqual([]);
  phone.expectNoTrouble();
}, 300_000);

import { expect, it } from "vitest";
import { axeViolations } from "./support/axe.ts";
import { CheckList } from "./support/checkList.ts";
import { CheckSteps } from "./support/checkSteps.ts";
import { openEverything } from "./support/controls.ts";
import { demoRecord } from "./support/everyStep.ts";
import { screensOnSite } from "./support/screensOnSite.ts";
import { refuseStorage } from "./support/storage.ts";
import { inMillimetres } from "./support/typist.ts";

const stage = screensOnSite();

it("a picture without words and a text too pale are found", async () => {
  const phone = await stage.openPhone();
  const page = await phone.newPage();
  await new CheckList(page).open(stage.address);
  await page.evaluate(() => {
    const picture = document.createElement("img");
    picture.src = "icon-192.png";
    const pale = document.createElement("p");
    pale.textContent = "Pale words";
    pale.style.color = "#cccccc";
    // Before all else, where nothing that floats over the page can hide them.
    document.querySelector("main")?.prepend(picture, pale);
  });
  const found = await axeViolations(page);
  expect(found.some((line) => line.startsWith("image-alt"))).toBe(true);
  expect(found.some((line) => line.startsWith("color-contrast"))).toBe(true);
});

it("the list, with its menus and dialogs", async () => {
  const phone = await stage.openPhone({ offlineCopy: true, demo: true });
  const page = await phone.newPage();
  const list = await new CheckList(page).open(stage.address);
  const name = "Tern van, loaded";
  await list.check(name).waitFor();
  await page.getByText("Ready offline").waitFor();
  await stage.screens.look(page, "list");
  await openEverything(page);
  await stage.screens.look(page, "list opened");
  await page.getByRole("button", { name: `More for ${name}` }).click();
  await stage.screens.look(page, "list menu");
  await page.getByRole("button", { name: "Rename" }).click();
  await page.getByRole("dialog").waitFor();
  await stage.screens.look(page, "list rename");
  await page.getByRole("textbox", { name: "Name" }).fill("Tern, blue");
  await page.getByRole("dialog").getByRole("button", { name: "Rename" }).click();
  await list.act("Tern, blue", "Copy");
  await list.check("Tern, blue (copy)").waitFor();
  await list.act("Tern, blue", "Delete");
  await page.getByRole("button", { name: "Undo" }).waitFor();
  await stage.screens.look(page, "list deleted");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect.poll(() => list.check("Tern, blue").count()).toBe(2);
  await page.goto(`${stage.address}#/nowhere/at/all`);
  await page.getByRole("heading", { name: "There is nothing at this address" }).waitFor();
  await stage.screens.look(page, "nowhere");
  await page.goto(`${stage.address}#/check/none/left.gap`);
  await page.getByRole("heading", { name: "This check is not here" }).waitFor();
  await stage.screens.look(page, "check not here");
  expect(stage.screens.wrong).toEqual([]);
  phone.expectNoTrouble();
});

it("what is said when something is wrong", async () => {
  const phone = await stage.openPhone({ colorScheme: "dark" });
  await refuseStorage(phone.context);
  const page = await phone.newPage();
  const list = await new CheckList(page).open(stage.address);
  await list.newCheck.click();
  const steps = new CheckSteps(page, inMillimetres);
  await steps.field("Vehicle").waitFor();
  const record = demoRecord("strut-too-stiff");
  await steps.fillUpTo("left.gap", record, "pack");
  await steps.reading().fill("a thumb");
  await steps.complaint(steps.reading());
  await stage.screens.look(page, "not kept and unreadable");
  await page.getByRole("button", { name: "All steps" }).click();
  await page.getByRole("dialog").waitFor();
  await stage.screens.look(page, "all steps");
  await page.getByRole("button", { name: "Back to this step" }).click();
  await steps.leaveBy(steps.button("Continue, fix later"));
  while (steps.step !== "finish") {
    const skip = page.getByRole("button", { name: /^Skip( for now)?$/ });
    await steps.leaveBy((await skip.isVisible()) ? skip : steps.button("Next"));
  }
  await stage.screens.look(page, "not complete");
  expect(stage.screens.wrong).toEqual([]);
});

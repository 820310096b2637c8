import { expect, it } from "vitest";
import { goToScreen } from "./support/everyScreen.ts";
import { demoRecord } from "./support/everyStep.ts";
import { phoneOnSite } from "./support/phoneOnSite.ts";
import { openListWith } from "./support/recordsOnPhone.ts";

const stage = phoneOnSite({ width: 740, height: 360 });
const notch = 44;

it("nothing of a step stands under the notches of a phone on its side", async () => {
  const page = await stage.phone.newPage();
  const session = await stage.phone.context.newCDPSession(page);
  await session.send("Emulation.setSafeAreaInsetsOverride", {
    insets: {
      left: notch,
      leftMax: notch,
      right: notch,
      rightMax: notch,
      bottom: 21,
      bottomMax: 21,
    },
  });
  const record = demoRecord("arm-fits");
  await openListWith(page, stage.site.address, [record]);
  await goToScreen(page, stage.site.address, `#/check/${record.id}/cautions`);
  await page.locator(".live-verdict").waitFor();
  const under = await page.evaluate((wide) => {
    const seen = document.querySelectorAll(
      ".progress-words, .progress-bar, .live-verdict > *, .screen-top-row > *, h1, .action-bar .button",
    );
    return [...seen]
      .map((each) => ({ name: each.className, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && (box.left < wide || box.right > innerWidth - wide))
      .map(({ name }) => name);
  }, notch);
  expect(under).toEqual([]);
  stage.phone.expectNoTrouble();
});

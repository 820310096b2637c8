import type { Locator } from "playwright-core";

/** Chooses a radio button or ticks a box as a finger does: on the words beside it. */
export async function pick(control: Locator): Promise<void> {
  await control.waitFor({ state: "attached" });
  if (await control.isChecked()) return;
  await control.locator("xpath=ancestor::label").click();
  if (!(await control.isChecked())) throw new Error(`Not chosen by a tap: ${control}`);
}

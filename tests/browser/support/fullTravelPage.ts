import type { Locator, Page } from "playwright-core";
import { pick, textOf } from "./controls.ts";

type Side = "left" | "right";

/** The full-travel check of one check. */
export class FullTravelPage {
  constructor(readonly page: Page) {}

  get heading(): Locator {
    return this.page.getByRole("heading", { level: 1, name: "Full-travel check" });
  }

  get sides(): Locator {
    return this.page.getByRole("heading", { name: /what touches where/ });
  }

  get kept(): Locator {
    return this.page.getByRole("status").filter({ hasText: /^\s*Saved$/ });
  }

  async acknowledge(spring = "Coil spring"): Promise<void> {
    await this.heading.waitFor();
    await pick(this.page.getByRole("radio", { name: new RegExp(`^${spring}`) }));
    await this.page.getByRole("checkbox").first().waitFor({ state: "attached" });
    for (const box of await this.page.getByRole("checkbox").all()) await pick(box);
    await this.sides.first().waitFor();
  }

  async measureHeights(): Promise<void> {
    await pick(this.page.getByRole("radio", { name: "Hub to fender" }));
  }

  /** Opens a row, types its number and closes it again. */
  async writeDown(side: Side, row: string, text: string, what?: string): Promise<void> {
    await this.page.getByRole("button", { name: `Write down: ${row}, ${side}` }).click();
    const entry = this.page.locator(".full-travel-entry");
    if (what !== undefined) {
      await entry.getByRole("textbox", { name: "What touches what" }).fill(what);
    }
    await entry
      .getByRole("textbox", { name: /wheel travel|height from hub/i })
      .first()
      .fill(text);
    await this.page.getByRole("button", { name: `Close: ${row}, ${side}` }).click();
  }

  /** What a row shows. */
  async written(side: Side, part: string): Promise<string> {
    return textOf(this.page.locator(`[data-contact="${side}.${part}"]`));
  }

  /** What the comparison says of one contact. */
  async verdictOf(side: Side, part: string): Promise<string> {
    const card = this.page.getByRole("region", {
      name: side === "left" ? "Left" : "Right",
      exact: true,
    });
    const line = card.locator(`[data-compared="${part}"]`);
    await line.waitFor();
    return textOf(line);
  }
}

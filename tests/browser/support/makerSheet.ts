import type { Page } from "playwright-core";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";

/** The sheet for sending a check straight to the maker's desk. */
export class MakerSheet {
  constructor(
    readonly page: Page,
    readonly address: string,
  ) {}

  /** The check on this phone, by way of a file, in place of the one there, and its sheet open. */
  async openFor(record: CheckRecord): Promise<this> {
    const { page, address } = this;
    await page.goto(`${address}#/open`);
    const buffer = Buffer.from(JSON.stringify(record));
    await page
      .getByLabel("Files to open")
      .setInputFiles({ name: "check.json", mimeType: "application/json", buffer });
    await page.getByRole("heading", { name: "A check was sent to you" }).waitFor();
    const replace = page.getByRole("button", { name: "Replace the one here" });
    const keep = page.getByRole("button", { name: /^(Save|Keep) (on this phone|both)$/ });
    await keep.and(page.locator(":enabled")).waitFor();
    if (await replace.isVisible()) {
      await replace.click();
      await page.getByRole("button", { name: "Replace", exact: true }).click();
    } else await keep.click();
    await page.waitForURL(/#\/check\//);
    await page.goto(`${address}#/check/${record.id}/answer`);
    await page.getByRole("button", { name: "Send", exact: true }).click();
    await page.getByRole("heading", { name: "Send this check" }).waitFor();
    return this;
  }

  async send(contact: string): Promise<void> {
    await this.page.getByLabel(/Mail or phone/).fill(contact);
    await this.page.getByRole("button", { name: /^Send (this version )?to/ }).click();
  }

  async state(state: "waiting" | "received" | "answered"): Promise<void> {
    await this.page.locator(`[data-sent="${state}"]`).waitFor();
  }
}

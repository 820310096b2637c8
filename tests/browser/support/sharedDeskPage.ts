import type { Page } from "playwright-core";
import type { Pack } from "../../../src/records/pack/pack.ts";
import { DeskPage } from "./deskPage.ts";
import type { Phone } from "./phone.ts";

/** A desk that shares its checks with others, and the person at it. */
export class SharedDeskPage extends DeskPage {
  constructor(
    page: Page,
    readonly office: Phone,
  ) {
    super(page);
  }

  async signIn(address: string, credential: string, name: string): Promise<this> {
    await this.open(address);
    await this.page.getByLabel("Credential file").setInputFiles(credential);
    await this.page.locator('[data-shared="on"]').filter({ hasText: name }).waitFor();
    return this;
  }

  /** Decides; the button has the name of the kind. */
  async decide(words: "Accept" | "Ask again" | "Advise this part"): Promise<void> {
    await this.page
      .locator(".desk-decide")
      .getByRole("button", { name: words, exact: true })
      .click();
  }

  async reply(state: "waiting" | "sent" | "fetched"): Promise<void> {
    await this.page.locator(`[data-reply="${state}"]`).waitFor();
  }

  async decidedTwice(person: string): Promise<void> {
    await this.page.locator(`[data-twice="${person}"]`).waitFor();
  }

  /** Another pack is in use at this desk from now on. */
  async usePack(address: string, pack: Pack): Promise<void> {
    const { page } = this;
    await page.goto(`${address}#/pack`);
    const buffer = Buffer.from(JSON.stringify(pack));
    await page
      .getByLabel("Library to open")
      .setInputFiles({ name: "pack.json", mimeType: "application/json", buffer });
    await page.getByRole("button", { name: "Use it instead" }).click();
    await page.getByText(`Opened: ${pack.name}`).waitFor();
  }

  async goOffline(): Promise<void> {
    await this.office.goOffline();
  }

  async comeBack(): Promise<void> {
    await this.office.context.setOffline(false);
  }
}

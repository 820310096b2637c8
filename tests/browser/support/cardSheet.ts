import type { Locator, Page } from "playwright-core";

/** The result made a card, under an answer. */
export class CardSheet {
  readonly part: Locator;

  constructor(readonly page: Page) {
    this.part = page.getByRole("region", { name: "Card to show and send" });
  }

  async open(): Promise<this> {
    await this.page.getByRole("button", { name: "Make a card to show or send" }).tap();
    await this.part.locator(".card-page").waitFor();
    return this;
  }

  get photos(): Locator {
    return this.part.locator(".card-photos img");
  }

  get code(): Locator {
    return this.part.getByRole("img", { name: "QR code of this check" });
  }

  async choosePhoto(words: string): Promise<void> {
    await this.part.locator(".card-choice label").filter({ hasText: words }).tap();
  }

  /** The picture as it is saved, as the path of its file. */
  async savedPicture(): Promise<string> {
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.part.getByRole("button", { name: "Save the picture" }).tap(),
    ]);
    return download.path();
  }
}

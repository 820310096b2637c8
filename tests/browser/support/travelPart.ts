import type { Locator, Page } from "playwright-core";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";

/** The travel view of an answer. */
export class TravelPart {
  readonly part: Locator;
  readonly slider: Locator;
  readonly time: Locator;

  constructor(readonly page: Page) {
    this.part = page.getByRole("region", { name: "Travel, to scale" });
    this.slider = this.part.getByRole("slider", { name: "Move the wheel up" });
    this.time = this.part.getByRole("slider").nth(1);
  }

  async ready(): Promise<this> {
    await this.slider.waitFor();
    return this;
  }

  /** Where the wheel is, as it is read out. */
  async place(): Promise<string> {
    return (await this.slider.getAttribute("aria-valuetext")) ?? "";
  }

  mark(words: string): Locator {
    return this.part.getByRole("button", { name: words, exact: true });
  }

  async readout(name: string): Promise<string> {
    const value = this.part.locator("dl > div").filter({ hasText: name }).locator("dd");
    return withPlainSpaces((await value.textContent()) ?? "");
  }

  /** Places where the travel ends, drawn as closed. */
  async closedClashes(): Promise<number> {
    return this.part.locator(".clash-closed").count();
  }

  async play(event: "landing" | "bump"): Promise<void> {
    const name = event === "landing" ? /^Play landing/ : /^Play bump/;
    await this.part.getByRole("button", { name }).tap();
  }

  /** s */
  async timeShown(): Promise<number> {
    return Number.parseFloat((await this.time.getAttribute("aria-valuetext")) ?? "");
  }

  async openNumbers(): Promise<void> {
    await this.part.getByText("Show the numbers").tap();
  }
}

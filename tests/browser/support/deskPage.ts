import type { Locator, Page } from "playwright-core";

/** The desk: the checks that came in, and one of them. */
export class DeskPage {
  constructor(readonly page: Page) {}

  get heading(): Locator {
    return this.page.getByRole("heading", { name: "Checks sent to this review desk" });
  }

  get rows(): Locator {
    return this.list.getByRole("option");
  }

  get list(): Locator {
    return this.page.getByRole("listbox");
  }

  get refused(): Locator {
    return this.page.locator(".desk-refused li");
  }

  async open(address: string): Promise<this> {
    await this.page.goto(`${address}#/desk`);
    await this.heading.waitFor();
    await this.page.getByLabel("Files to take in").waitFor({ state: "attached" });
    return this;
  }

  /** What an import said once it had ended. */
  async ended(): Promise<string> {
    const said = this.page.locator('[data-import="ended"]');
    await said.waitFor({ timeout: 110_000 });
    return (await said.textContent()) ?? "";
  }

  async takeFiles(files: Parameters<Locator["setInputFiles"]>[0]): Promise<string> {
    await this.closeImport();
    await this.page.getByLabel("Files to take in").setInputFiles(files);
    return this.ended();
  }

  /** What was said about an import before is put away, so that it is not taken for the next one's. */
  async closeImport(): Promise<void> {
    const close = this.page.getByRole("button", { name: "Close", exact: true });
    if (await close.isVisible()) await close.click();
  }

  async paste(text: string): Promise<string> {
    await this.closeImport();
    await this.page.getByRole("button", { name: "Paste links" }).click();
    await this.page.getByLabel("Links, or messages with links in them").fill(text);
    await this.page.getByRole("button", { name: "Take them in" }).click();
    return this.ended();
  }

  /** Restores a backup that was taken to the desk, once it was looked at; what was said then. */
  async restore(
    file: Parameters<Locator["setInputFiles"]>[0],
    { withDecisions = false } = {},
  ): Promise<string> {
    await this.lookInto(file);
    if (withDecisions) await this.page.getByText("Let them count here").click();
    await this.page.getByRole("button", { name: "Restore", exact: true }).click();
    const said = this.page.getByText(/^Restored: /);
    await said.waitFor({ timeout: 300_000 });
    return (await said.textContent()) ?? "";
  }

  /** To what is in a backup that was taken to the desk. */
  async lookInto(file: Parameters<Locator["setInputFiles"]>[0]): Promise<void> {
    await this.page.getByLabel("Files to take in").setInputFiles(file);
    await this.page.getByRole("button", { name: "See what is in it" }).click();
    await this.page.locator("[data-survey]").waitFor({ timeout: 300_000 });
  }

  row(words: string): Locator {
    return this.rows.filter({ hasText: words });
  }

  /** Opens a check and waits until its answer is whole. */
  async openCheck(words: string): Promise<void> {
    await this.row(words).click();
    await this.computed();
  }

  async computed(): Promise<void> {
    await this.page.getByText("is computed.").waitFor({ state: "attached", timeout: 60_000 });
  }

  async choose(kind: "Accept" | "Ask again" | "Other part"): Promise<void> {
    await this.page.locator(".desk-decide .segmented label").filter({ hasText: kind }).click();
  }

  /** Waits until the tested list is whole, and shows what fails in it as well. */
  async partsTried(): Promise<void> {
    await this.page.locator(".desk-decide li.ranked").first().waitFor({ timeout: 60_000 });
    const working = this.page.getByText(/stops worked out/);
    await working.waitFor({ state: "detached", timeout: 100_000 });
    const more = this.page.getByRole("button", { name: "Show them, and what fails" });
    if (await more.isVisible()) await more.click();
  }

  /** The way to choose one of the list, by its place. */
  part(place: number): Locator {
    return this.page.locator(".desk-decide li.ranked button").nth(place);
  }

  async name(name: string): Promise<void> {
    await this.page.getByLabel("Your name").fill(name);
  }

  decided(kind: "accept" | "askAgain" | "otherPart"): Locator {
    return this.page.locator(`[data-decided="${kind}"]`);
  }

  async saved(button: string): Promise<string> {
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.page.getByRole("button", { name: button }).click(),
    ]);
    return download.path();
  }
}

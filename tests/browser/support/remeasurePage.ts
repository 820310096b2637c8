import type { Locator, Page } from "playwright-core";
import { CheckSteps } from "./checkSteps.ts";
import { inMillimetres } from "./typist.ts";

/** Measuring again, from the answer and back to it. */
export class RemeasurePage {
  constructor(readonly page: Page) {}

  get bar(): Locator {
    return this.page.getByRole("complementary", { name: "Re-measure" });
  }

  get before(): Locator {
    return this.page.getByRole("region", { name: "Earlier value" });
  }

  get heading(): Locator {
    return this.page.getByRole("heading", { level: 1 });
  }

  get start(): Locator {
    return this.page.getByRole("button", { name: /^Re-measure: \d+ reading/ });
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole("button", { name, exact: typeof name === "string" });
  }

  reading(time = 0): Locator {
    return this.page.locator("main").getByRole("textbox").nth(time);
  }

  /** From the answer to the first reading, by the cautions where they were not read yet. */
  async begin(): Promise<void> {
    await this.start.click();
    await this.bar.waitFor();
    if ((await this.heading.textContent()) === "Before you measure") {
      await new CheckSteps(this.page, inMillimetres).acknowledge();
    }
    await this.before.waitFor();
  }

  async goOn(): Promise<void> {
    await this.button("Go on").click();
  }
}

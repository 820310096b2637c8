import { readFileSync } from "node:fs";
import type { Download, Locator, Page } from "playwright-core";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { pick } from "./controls.ts";

export async function downloadedRecord(
  download: Download,
): Promise<{ file: string; record: CheckRecord }> {
  const file = await download.path();
  return { file, record: JSON.parse(readFileSync(file, "utf8")) as CheckRecord };
}

/** The first screen: the checks on this phone. */
export class CheckList {
  constructor(readonly page: Page) {}

  get heading(): Locator {
    return this.page.getByRole("heading", {
      level: 1,
      name: /^(Checks on this phone|Will this bump stop work)/,
    });
  }

  ready(release: string): Locator {
    return this.page.getByText(`Ready offline · version ${release}`);
  }

  check(name: string): Locator {
    return this.page.locator("a.check-link").filter({ hasText: name });
  }

  checkOf({ id }: CheckRecord): Locator {
    return this.page.locator(`a.check-link[href^="#/check/${id}"]`);
  }

  /** The checks that stand under a job's name, by what each row says. */
  async rowsOfJob(name: string): Promise<readonly string[]> {
    const job = this.page.locator(".check-job").filter({ hasText: name });
    return job.locator("a.check-link").allInnerTexts();
  }

  get search(): Locator {
    return this.page.getByRole("searchbox", { name: "Find a check" });
  }

  get newCheck(): Locator {
    return this.page.getByRole("button", { name: /^(New|Full) check/ });
  }

  async open(address: string): Promise<this> {
    await this.page.goto(address);
    await this.heading.waitFor();
    return this;
  }

  async useInches(): Promise<void> {
    await this.page.getByRole("link", { name: "Settings" }).click();
    await pick(this.page.getByRole("radio", { name: /^US/ }));
    await this.page.getByRole("button", { name: "Done" }).click();
    await this.heading.waitFor();
  }

  /** What can be done with a check, beside opening it. */
  async act(name: string, action: "Rename" | "Copy" | "Save as a file" | "Delete"): Promise<void> {
    await this.page.getByRole("button", { name: `More for ${name}`, exact: true }).click();
    await this.page.getByRole("button", { name: action, exact: true }).click();
  }
}

import type { Browser } from "playwright-core";
import { Phone, type PhoneOptions } from "../browser/support/phone.ts";

/** A phone with its offline copy, as people have it, whose pages also take functions that the runner of these scripts has marked with names. */
export async function measuredPhone(browser: Browser, options: PhoneOptions = {}): Promise<Phone> {
  const phone = await Phone.open(browser, { offlineCopy: true, demo: true, ...options });
  await phone.context.addInitScript("globalThis.__name = (named) => named;");
  return phone;
}

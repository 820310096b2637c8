import { existsSync } from "node:fs";
import { firefox, type Page } from "playwright-core";
import { WebKitSession, type WindowSize } from "../webkit/driver.ts";
import { WebKitPage } from "../webkit/webkitPage.ts";

/** One window of a browser, with the page objects' own idea of a page. */
export interface EngineWindow {
  readonly page: Page;
  resize(size: WindowSize): Promise<void>;
  errors(): Promise<readonly string[]>;
  close(): Promise<void>;
}

export interface Engine {
  readonly name: string;
  /** The programs it needs. */
  readonly programs: readonly string[];
  open(size: WindowSize): Promise<EngineWindow>;
}

/** The style that taking a screenshot puts into the page, and that the page's policy refuses. */
const ofScreenshots = "sha256-YjaKGiklmzC6wjXA513HAMmzus8VE61XCOT+SmwNZWA=";

async function openFirefox(size: WindowSize): Promise<EngineWindow> {
  // Through WebDriver BiDi, which the channel's name asks for.
  const browser = await firefox.launch({
    executablePath: "/usr/bin/firefox-esr",
    channel: "moz-firefox",
    headless: true,
  });
  const context = await browser.newContext({ viewport: size, locale: "en-US" });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  const errors: string[] = [];
  page.on("pageerror", ({ message }) => {
    if (!message.includes(ofScreenshots)) errors.push(`error: ${message}`);
  });
  return {
    page,
    resize: (wanted) => page.setViewportSize(wanted),
    errors: async () => errors,
    close: () => browser.close(),
  };
}

async function openWebKit(size: WindowSize): Promise<EngineWindow> {
  const session = await WebKitSession.start(size);
  const page = new WebKitPage(session);
  return {
    page: page as unknown as Page,
    resize: (wanted) => session.resize(wanted),
    errors: () => page.errors(),
    close: () => session.end(),
  };
}

const webkitBrowser = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser";

export const engines: readonly Engine[] = [
  { name: "Firefox", programs: ["/usr/bin/firefox-esr"], open: openFirefox },
  {
    name: "WebKit",
    programs: ["/usr/bin/WebKitWebDriver", webkitBrowser, "/usr/bin/Xvfb"],
    open: openWebKit,
  },
];

export function missingPrograms({ programs }: Engine): readonly string[] {
  return programs.filter((program) => !existsSync(program));
}

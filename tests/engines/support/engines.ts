import { firefox, type Page } from "playwright-core";
import {
  firefoxProgram,
  missingPrograms,
  otherEngines,
} from "../../../src/tooling/otherEngines.mjs";
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
  /** Programs that it needs and that are not here. */
  readonly missing: readonly string[];
  open(size: WindowSize): Promise<EngineWindow>;
}

/** The style that taking a screenshot puts into the page, and that the page's policy refuses. */
const ofScreenshots = "sha256-YjaKGiklmzC6wjXA513HAMmzus8VE61XCOT+SmwNZWA=";

async function openFirefox(size: WindowSize): Promise<EngineWindow> {
  // Through WebDriver BiDi, which the channel's name asks for.
  const browser = await firefox.launch({
    executablePath: firefoxProgram,
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

const opening: { readonly [name: string]: (size: WindowSize) => Promise<EngineWindow> } = {
  Firefox: openFirefox,
  WebKit: openWebKit,
};

export const engines: readonly Engine[] = otherEngines.map((engine) => {
  const open = opening[engine.name];
  if (!open) throw new Error(`No way is known to open ${engine.name}.`);
  return { name: engine.name, missing: missingPrograms(engine), open };
});

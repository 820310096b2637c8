import { firefox, type Page } from "playwright-core";
import {
  firefoxProgram,
  missingPrograms,
  otherEngines,
} from "../../../src/tooling/otherEngines.mjs";
import { launchChromium, Phone } from "../../browser/support/phone.ts";
import { freePort } from "../../support/freePort.ts";
import { Marionette } from "../firefox/marionette.ts";
import { WebKitSession, type WindowSize } from "../webkit/driver.ts";
import { WebKitPage } from "../webkit/webkitPage.ts";

/** An element as a screen reader is told of it. */
export interface Told {
  readonly role: string;
  readonly name: string;
}

/** One window of a browser, with the page objects' own idea of a page. */
export interface EngineWindow {
  readonly page: Page;
  resize(size: WindowSize): Promise<void>;
  errors(): Promise<readonly string[]>;
  /** What the engine's own accessibility tree makes of each element that a selector finds. */
  told(selector: string): Promise<readonly Told[]>;
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
  const port = await freePort();
  // Through WebDriver BiDi, which the channel's name asks for.
  const browser = await firefox.launch({
    executablePath: firefoxProgram,
    channel: "moz-firefox",
    headless: true,
    args: ["--marionette"],
    firefoxUserPrefs: { "marionette.port": port },
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
    told: (selector) => toldByFirefox(port, page, selector),
    close: () => browser.close(),
  };
}

/** BiDi finds elements by role and name, but does not say them: that only the classic commands do. */
async function toldByFirefox(port: number, page: Page, selector: string): Promise<Told[]> {
  const marionette = await Marionette.open(port);
  try {
    const handles = (await marionette.command("WebDriver:GetWindowHandles")) as string[];
    for (const handle of handles) {
      await marionette.command("WebDriver:SwitchToWindow", { handle, focus: false });
      const { value } = (await marionette.command("WebDriver:GetCurrentURL")) as { value: string };
      if (value === page.url()) break;
    }
    const found = (await marionette.command("WebDriver:FindElements", {
      using: "css selector",
      value: selector,
    })) as { [key: string]: string }[];
    const told: Told[] = [];
    for (const element of found) {
      const [id] = Object.values(element);
      const ask = async (what: "Role" | "Label") =>
        ((await marionette.command(`WebDriver:GetComputed${what}`, { id })) as { value: string })
          .value;
      told.push({ role: await ask("Role"), name: await ask("Label") });
    }
    await marionette.command("WebDriver:DeleteSession");
    return told;
  } finally {
    marionette.close();
  }
}

/** The reference: its whole tree, in its own order. */
export async function openChromium({ width, height }: WindowSize): Promise<EngineWindow> {
  const browser = await launchChromium();
  const phone = await Phone.open(browser, { width, height });
  const page = await phone.newPage();
  return {
    page,
    resize: (wanted) => page.setViewportSize(wanted),
    errors: async () => phone.troubles,
    told: async (selector) => {
      const session = await phone.context.newCDPSession(page);
      const { root } = await session.send("DOM.getDocument");
      const { nodeIds } = await session.send("DOM.querySelectorAll", {
        nodeId: root.nodeId,
        selector,
      });
      const wanted = new Set<number>();
      for (const nodeId of nodeIds) {
        const { node } = await session.send("DOM.describeNode", { nodeId });
        wanted.add(node.backendNodeId);
      }
      const { nodes } = await session.send("Accessibility.getFullAXTree");
      await session.detach();
      const byId = new Map(nodes.map((node) => [node.nodeId, node]));
      const inOrder: Told[] = [];
      const walk = (id: string): void => {
        const node = byId.get(id);
        if (!node) return;
        if (node.backendDOMNodeId && wanted.has(node.backendDOMNodeId) && !node.ignored) {
          inOrder.push({ role: `${node.role?.value ?? ""}`, name: `${node.name?.value ?? ""}` });
        }
        node.childIds?.forEach(walk);
      };
      if (nodes[0]) walk(nodes[0].nodeId);
      return inOrder;
    },
    close: async () => {
      await phone.close();
      await browser.close();
    },
  };
}

async function openWebKit(size: WindowSize): Promise<EngineWindow> {
  const session = await WebKitSession.start(size);
  const page = new WebKitPage(session);
  return {
    page: page as unknown as Page,
    resize: (wanted) => session.resize(wanted),
    errors: () => page.errors(),
    told: async (selector) =>
      (await session.ofEach(selector, ["computedrole", "computedlabel"])).map(
        ([role = "", name = ""]) => ({ role, name }),
      ),
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

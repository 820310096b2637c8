import { type Browser, firefox, type Page } from "playwright-core";
import {
  firefoxProgram,
  missingPrograms,
  otherEngines,
} from "../../../src/tooling/otherEngines.mjs";
import { launchChromium, Phone } from "../../browser/support/phone.ts";
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
  /**
   * What the engine's own accessibility tree makes of each element that has the attribute `mark`, its value the
   * place in the page. `mayBe`: what each may be, for an engine that only confirms.
   */
  told(mark: string, mayBe: readonly Told[]): Promise<readonly Told[]>;
  close(): Promise<void>;
}

export interface Engine {
  readonly name: string;
  /** Programs that it needs and that are not here. */
  readonly missing: readonly string[];
  open(size: WindowSize): Promise<EngineWindow>;
  /** Ends what its windows had in common, once none is open any more. */
  quit(): Promise<void>;
}

/** The style that taking a screenshot puts into the page, and that the page's policy refuses. */
const ofScreenshots = "sha256-YjaKGiklmzC6wjXA513HAMmzus8VE61XCOT+SmwNZWA=";

/** Started once, as that takes longer than most that is done with it; each window has a store of its own. */
const started = { firefox: null as Promise<Browser> | null };

function startFirefox(): Promise<Browser> {
  // Through WebDriver BiDi, which the channel's name asks for.
  started.firefox ??= firefox.launch({
    executablePath: firefoxProgram,
    channel: "moz-firefox",
    headless: true,
  });
  return started.firefox;
}

async function quitFirefox(): Promise<void> {
  const browser = started.firefox;
  started.firefox = null;
  await (await browser)?.close();
}

async function openFirefox(size: WindowSize): Promise<EngineWindow> {
  const browser = await startFirefox();
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
    told: (mark, mayBe) => toldByFirefox(page, mark, mayBe),
    close: () => context.close(),
  };
}

/** What this needs of playwright-core's own side, whose version is held back. */
interface OwnSide {
  mainFrame(): { readonly _id: string };
  readonly delegate: {
    readonly _session: {
      send(method: string, parameters: object): Promise<{ nodes: readonly LocatedNode[] }>;
    };
  };
}

interface LocatedNode {
  readonly sharedId: string;
}

/**
 * BiDi finds elements by the role and name that Firefox gives them, but does not say them: each is asked whether
 * it is what it may be (https://w3c.github.io/webdriver-bidi/#command-browsingContext-locateNodes).
 */
async function toldByFirefox(page: Page, mark: string, mayBe: readonly Told[]): Promise<Told[]> {
  const { _connection } = page as unknown as { _connection: { toImpl(page: Page): OwnSide } };
  const own = _connection.toImpl(page);
  const locate = async (locator: object, startNodes?: readonly LocatedNode[]) => {
    const { nodes } = await own.delegate._session.send("browsingContext.locateNodes", {
      context: own.mainFrame()._id,
      locator,
      serializationOptions: { maxDomDepth: 0 },
      ...(startNodes && { startNodes, maxNodeCount: 1 }),
    });
    return nodes;
  };
  const told: Told[] = [];
  for (const [place, { sharedId }] of (
    await locate({ type: "css", value: `[${mark}]` })
  ).entries()) {
    const is = async (value: Partial<Told>) => {
      const [first] = await locate({ type: "accessibility", value }, [{ sharedId }]);
      return first?.sharedId === sharedId;
    };
    const { role, name } = mayBe[place] ?? { role: "", name: "" };
    told.push({
      role: (await is({ role })) ? role : "another role",
      name: name !== "" && (await is({ name })) ? name : "another name",
    });
  }
  return told;
}

/** The reference: its whole tree, in its own order. */
export async function openChromium({ width, height }: WindowSize): Promise<EngineWindow> {
  const browser = await launchChromium();
  // No phone is emulated: the others have the pointer of this machine, too.
  const context = await browser.newContext({ viewport: { width, height }, locale: "en-US" });
  const phone = Phone.of(context);
  const page = await phone.newPage();
  return {
    page,
    resize: (wanted) => page.setViewportSize(wanted),
    errors: async () => phone.troubles,
    told: async (mark) => {
      const session = await phone.context.newCDPSession(page);
      const { root } = await session.send("DOM.getDocument");
      const { nodeIds } = await session.send("DOM.querySelectorAll", {
        nodeId: root.nodeId,
        selector: `[${mark}]`,
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
    told: async (mark) =>
      (await session.ofEach(`[${mark}]`, ["computedrole", "computedlabel"])).map(
        ([role = "", name = ""]) => ({ role, name }),
      ),
    close: () => session.end(),
  };
}

function engineOf(name: string, own: Pick<Engine, "open" | "quit">): Engine {
  const programs = otherEngines.find((engine) => engine.name === name);
  if (!programs) throw new Error(`Nothing is known of the programs of ${name}.`);
  return { name, missing: missingPrograms(programs), ...own };
}

export const firefoxEngine = engineOf("Firefox", { open: openFirefox, quit: quitFirefox });
export const webKitEngine = engineOf("WebKit", { open: openWebKit, quit: async () => undefined });
export const engines: readonly Engine[] = [firefoxEngine, webKitEngine];

import { writeFileSync } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import { build } from "vite";
import type { WebKitSession } from "./driver.ts";
import { inWords, type Path, type Step, sought } from "./path.ts";

const patience = 20_000;
const elementKey = "element-6066-11e4-a52e-4f735466cecf";

interface NameOptions {
  readonly name?: string | RegExp;
  readonly exact?: boolean;
  readonly level?: number;
}
type Wait = {
  readonly state?: "visible" | "hidden" | "attached" | "detached";
  readonly timeout?: number;
};

let inPageScript: Promise<string> | null = null;
function scriptInPage(): Promise<string> {
  inPageScript ??= build({
    configFile: false,
    publicDir: false,
    logLevel: "error",
    build: {
      write: false,
      lib: { entry: "tests/engines/webkit/inPage.ts", formats: ["iife"], name: "stopfitInPage" },
    },
  }).then((built) => {
    const outputs = (Array.isArray(built) ? built : [built]).flatMap((each) =>
      "output" in each ? each.output : [],
    );
    const chunk = outputs.find((each) => each.type === "chunk");
    if (!chunk) throw new Error("The script for the page was not built.");
    // What finds elements by role asks for settings in the environment of Node.
    return `const process = { env: {} };${chunk.code}`;
  });
  return inPageScript;
}

/**
 * As much of a page, in the words of playwright-core, as the page objects of the browser tests use, over
 * WebDriver: they then run in WebKit unchanged.
 */
export class WebKitPage {
  private lastAddress = "about:blank";
  readonly keyboard = {
    press: async (key: string) => this.keys(key),
  };

  constructor(readonly session: WebKitSession) {}

  url(): string {
    return this.lastAddress;
  }

  async goto(address: string): Promise<void> {
    await this.session.command("POST", "/url", { url: address });
    await this.evaluate(() => undefined);
  }

  async reload(): Promise<void> {
    await this.session.command("POST", "/refresh");
    await this.evaluate(() => undefined);
  }

  async waitForTimeout(ms: number): Promise<void> {
    await pause(ms);
  }

  async screenshot({ path }: { readonly path?: string } = {}): Promise<Buffer> {
    const picture = Buffer.from(
      (await this.session.command("GET", "/screenshot")) as string,
      "base64",
    );
    if (path) writeFileSync(path, picture);
    return picture;
  }

  /** What a page's function gives, by what its caller hands over to it. */
  async evaluate<Told, Given = void>(
    work: ((argument: Given) => Told | Promise<Told>) | string,
    argument?: Given,
  ): Promise<Told> {
    const source = typeof work === "string" ? `() => (${work})` : String(work);
    const script = `const [argument, done] = arguments;
      Promise.resolve().then(() => (${source})(argument)).then(
        (value) => done({ value: value === undefined ? null : value, address: location.href }),
        (error) => done({ error: String(error && error.stack || error), address: location.href }));`;
    const told = (await this.session.command("POST", "/execute/async", {
      script,
      args: [argument ?? null],
    })) as { value?: unknown; error?: string; address: string };
    this.lastAddress = told.address;
    if (told.error !== undefined) throw new Error(told.error);
    return told.value as Told;
  }

  async waitForFunction<Given = void>(
    work: (argument: Given) => unknown,
    argument?: Given,
    { timeout = patience }: { readonly timeout?: number } = {},
  ): Promise<void> {
    await until(
      () => this.evaluate(work, argument),
      timeout,
      () => `a condition: ${work}`,
    );
  }

  locator(selector: string): WebKitLocator {
    return new WebKitLocator(this, []).locator(selector);
  }
  getByRole(role: string, options: NameOptions = {}): WebKitLocator {
    return new WebKitLocator(this, []).getByRole(role, options);
  }
  getByText(text: string | RegExp, options: { readonly exact?: boolean } = {}): WebKitLocator {
    return new WebKitLocator(this, []).getByText(text, options);
  }
  getByLabel(text: string | RegExp, options: { readonly exact?: boolean } = {}): WebKitLocator {
    return new WebKitLocator(this, []).getByLabel(text, options);
  }

  /** What was thrown in the page since the app was first looked at. */
  async errors(): Promise<string[]> {
    await this.prepare();
    return (await this.evaluate(() => window.stopfitErrors ?? [])) as string[];
  }

  /** Each new document needs the script once. */
  async prepare(): Promise<void> {
    const there = await this.evaluate(() => window.stopfitLooksFor !== undefined);
    if (there) return;
    await this.session.command("POST", "/execute/sync", { script: await scriptInPage(), args: [] });
  }

  async keys(key: string): Promise<void> {
    const names: { readonly [name: string]: string } = {
      Enter: "\uE007",
      Tab: "\uE004",
      Escape: "\uE00C",
      Backspace: "\uE003",
      ArrowLeft: "\uE012",
      ArrowRight: "\uE014",
      ArrowUp: "\uE013",
      ArrowDown: "\uE015",
      Home: "\uE011",
      End: "\uE010",
    };
    const value = names[key] ?? key;
    const actions = [
      { type: "keyDown", value },
      { type: "keyUp", value },
    ];
    await this.session.command("POST", "/actions", {
      actions: [{ type: "key", id: "keys", actions }],
    });
  }
}

async function until(
  holds: () => Promise<unknown>,
  timeout: number,
  what: () => string,
): Promise<void> {
  const end = Date.now() + timeout;
  let last: unknown = null;
  for (;;) {
    try {
      if (await holds()) return;
      last = null;
    } catch (error) {
      last = error;
    }
    if (Date.now() > end) {
      throw new Error(`Waited ${timeout} ms for ${what()}${last ? `; last: ${last}` : ""}`);
    }
    await pause(40);
  }
}

export class WebKitLocator {
  constructor(
    private readonly page: WebKitPage,
    readonly path: Path,
  ) {}

  private with(step: Step): WebKitLocator {
    return new WebKitLocator(this.page, [...this.path, step]);
  }
  locator(selector: string): WebKitLocator {
    const xpath = /^xpath=(.*)$/.exec(selector)?.[1];
    return this.with(xpath ? { by: "xpath", selector: xpath } : { by: "css", selector });
  }
  getByRole(role: string, { name, exact, level }: NameOptions = {}): WebKitLocator {
    return this.with({
      by: "role",
      role,
      name: name === undefined ? null : sought(name, exact),
      level: level ?? null,
    });
  }
  getByText(text: string | RegExp, { exact }: { readonly exact?: boolean } = {}): WebKitLocator {
    return this.with({ by: "text", text: sought(text, exact) });
  }
  getByLabel(text: string | RegExp, { exact }: { readonly exact?: boolean } = {}): WebKitLocator {
    return this.with({ by: "label", text: sought(text, exact) });
  }
  filter({ hasText }: { readonly hasText: string | RegExp }): WebKitLocator {
    return this.with({ by: "hasText", text: sought(hasText) });
  }
  and({ path }: WebKitLocator): WebKitLocator {
    return this.with({ by: "alsoIn", path });
  }
  nth(place: number): WebKitLocator {
    return this.with({ by: "nth", place });
  }
  first(): WebKitLocator {
    return this.nth(0);
  }
  last(): WebKitLocator {
    return this.nth(-1);
  }
  async all(): Promise<WebKitLocator[]> {
    return Array.from({ length: await this.count() }, (_, place) => this.nth(place));
  }

  /** Runs in the page with the elements found; a document that has not the script for it yet gets it. */
  private async ask<Value>(
    work: ((found: Element[], argument: never) => Value) | string,
    argument?: unknown,
  ): Promise<Value> {
    const given = JSON.stringify({ path: this.path, argument: argument ?? null });
    const source = `((given) => window.stopfitLooksFor && {
      told: (${work})(window.stopfitLooksFor.resolve(given.path), given.argument),
    })(${given})`;
    const ask = () => this.page.evaluate(source) as Promise<{ told: Value } | null>;
    let answer = await ask();
    while (answer === null) {
      await this.page.prepare();
      answer = await ask();
    }
    return answer.told;
  }

  count(): Promise<number> {
    return this.ask((found) => found.length);
  }

  /** Waits for the one element and asks something of it. */
  private async askOne<Value>(
    work: (element: Element, argument: never) => Value,
    argument?: unknown,
  ): Promise<Value> {
    const ofOne = `(found, argument) =>
      ({ all: found.length, one: found.length === 1 ? [(${work})(found[0], argument)] : [] })`;
    const told: Value[] = [];
    const asked = async () => {
      const { all, one } = await this.ask<{ all: number; one: Value[] }>(ofOne, argument);
      if (all > 1) throw new Error(`${all} of them stand there`);
      told.push(...one);
      return told.length > 0;
    };
    await until(asked, patience, () => `attached: ${this}`);
    return told[0] as Value;
  }
  textContent(): Promise<string | null> {
    return this.askOne((element) => element.textContent);
  }
  inputValue(): Promise<string> {
    return this.askOne((element) => (element as HTMLInputElement).value);
  }
  getAttribute(name: string): Promise<string | null> {
    return this.askOne((element, wanted: string) => element.getAttribute(wanted), name);
  }
  isChecked(): Promise<boolean> {
    return this.askOne((element) =>
      element instanceof HTMLInputElement
        ? element.checked
        : element.getAttribute("aria-checked") === "true",
    );
  }
  async isVisible(): Promise<boolean> {
    return this.ask((found) => found.some((each) => window.stopfitLooksFor?.visible(each)));
  }

  async waitFor({ state = "visible", timeout = patience }: Wait = {}): Promise<void> {
    const holds = async () => {
      const { all, shown } = await this.ask((found) => ({
        all: found.length,
        shown: found.filter((each) => window.stopfitLooksFor?.visible(each)).length,
      }));
      if (all > 1 && (state === "visible" || state === "attached")) {
        throw new Error(`${all} of them stand there`);
      }
      return { visible: shown > 0, attached: all > 0, hidden: shown === 0, detached: all === 0 }[
        state
      ];
    };
    await until(holds, timeout, () => `${state}: ${this}`);
  }

  /** The one element as WebDriver names it, `ready` done with it; null as long as it is not `state`. */
  private async element(
    state: "visible" | "attached",
    ready: (element: HTMLInputElement) => void = () => undefined,
  ): Promise<string | null> {
    const script = `const looks = window.stopfitLooksFor;
      if (!looks) return { unprepared: true, all: 0, one: null };
      const found = looks.resolve(arguments[0]);
      const [one] = arguments[1] === "visible" ? found.filter(looks.visible) : found;
      if (one && found.length === 1) (${ready})(one);
      return { unprepared: false, all: found.length, one: one ?? null };`;
    const told = (await this.page.session.command("POST", "/execute/sync", {
      script,
      args: [this.path, state],
    })) as { unprepared: boolean; all: number; one: { [key: string]: string } | null };
    if (told.unprepared) await this.page.prepare();
    if (told.all > 1) throw new Error(`${told.all} of them stand there`);
    return told.one?.[elementKey] ?? null;
  }

  /** Tries anew where something lay over it or it was drawn anew in between. */
  private async onElement(
    ready: (element: HTMLInputElement) => void,
    work: (id: string) => Promise<unknown> = async () => undefined,
    { timeout = patience, state = "visible" }: Wait & { state?: "visible" | "attached" } = {},
  ): Promise<void> {
    await until(
      async () => {
        const id = await this.element(state, ready);
        if (id !== null) await work(id);
        return id !== null;
      },
      timeout,
      () => `${state}: ${this}`,
    );
    await this.page.evaluate(() => undefined);
  }

  /** A page that moved under the finger keeps the tap from what it would have met, and it is tapped anew. */
  async click({ timeout = patience }: { readonly timeout?: number } = {}): Promise<void> {
    await this.onElement(
      (element) => {
        element.scrollIntoView({ block: "center", behavior: "instant" });
        window.stopfitLooksFor?.aimAt(element);
      },
      async (id) => {
        await this.page.session.command("POST", `/element/${id}/click`);
        const met = await this.page.evaluate(() => window.stopfitLooksFor?.hasMet() ?? true);
        if (!met) throw new Error(`Something else was met: ${this}`);
      },
      { timeout },
    );
  }

  /** Puts a text in place of what stands there, at once. */
  async fill(text: string): Promise<void> {
    await this.onElement((field) => {
      field.scrollIntoView({ block: "center", behavior: "instant" });
      field.focus();
      field.select();
    });
    await this.page.evaluate(
      (put: string) => document.execCommand(put === "" ? "delete" : "insertText", false, put),
      text,
    );
  }

  private type(id: string, text: string): Promise<unknown> {
    return this.page.session.command("POST", `/element/${id}/value`, { text });
  }

  /** The path of a file, given to a field for files. */
  async setInputFiles(file: string): Promise<void> {
    await this.onElement(
      () => undefined,
      (id) => this.type(id, file),
      { state: "attached" },
    );
  }

  toString(): string {
    return inWords(this.path);
  }
}

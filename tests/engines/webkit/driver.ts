import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { webkitProgram } from "../../../src/tooling/otherEngines.mjs";
import { freePort } from "../../support/freePort.ts";

/** X's own choice of a free screen, told by it on its third channel. */
async function virtualScreen(): Promise<{ process: ChildProcess; name: string }> {
  const process = spawn(
    "Xvfb",
    ["-displayfd", "3", "-screen", "0", "1400x1000x24", "-nolisten", "tcp"],
    {
      stdio: ["ignore", "ignore", "ignore", "pipe"],
    },
  );
  const told = process.stdio[3];
  if (!told || !("on" in told)) throw new Error("Xvfb has no channel to tell its screen by.");
  const name = await new Promise<string>((done, failed) => {
    process.on("exit", () => failed(new Error("Xvfb ended before it had a screen.")));
    told.on("data", (data) => done(`:${String(data).trim()}`));
  });
  return { process, name };
}

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

interface Answer {
  readonly value: unknown;
}

/** W3C WebDriver, as far as needed: https://www.w3.org/TR/webdriver2/, sections 6 to 12. */
export class WebKitSession {
  private constructor(
    private readonly processes: readonly ChildProcess[],
    private readonly home: string,
    private readonly address: string,
    private readonly id: string,
  ) {}

  static async start(size: WindowSize): Promise<WebKitSession> {
    const screen = await virtualScreen();
    const home = mkdtempSync(join(tmpdir(), "stopfit-webkit-"));
    const port = await freePort();
    const driver = spawn("WebKitWebDriver", [`--port=${port}`], {
      stdio: "ignore",
      // A home of its own: nothing is found there, and nothing is left behind.
      env: {
        ...process.env,
        HOME: home,
        XDG_DATA_HOME: home,
        XDG_CACHE_HOME: home,
        DISPLAY: screen.name,
        // Without a graphics card what draws on one is slower than the processor alone.
        WEBKIT_SKIA_ENABLE_CPU_RENDERING: "1",
      },
    });
    const address = `http://127.0.0.1:${port}`;
    const geometry = `--geometry=${size.width}x${size.height}`;
    const options = { args: ["--automation", "--full-screen", geometry] };
    const wanted = {
      alwaysMatch: { "webkitgtk:browserOptions": { binary: webkitProgram, ...options } },
    };
    let begun: { sessionId: string } | null = null;
    for (let tries = 0; begun === null; tries++) {
      try {
        begun = (await send(address, "POST", "/session", { capabilities: wanted })) as {
          sessionId: string;
        };
      } catch (error) {
        if (tries === 40) throw error;
        await pause(250);
      }
    }
    const session = new WebKitSession([driver, screen.process], home, address, begun.sessionId);
    await session.resize(size);
    return session;
  }

  command(method: "GET" | "POST" | "DELETE", path: string, body?: object): Promise<unknown> {
    return send(this.address, method, `/session/${this.id}${path}`, body);
  }

  /** Asks something of each element that a selector finds, in the order of the page. */
  async ofEach(selector: string, what: readonly string[]): Promise<string[][]> {
    const found = (await this.command("POST", "/elements", {
      using: "css selector",
      value: selector,
    })) as { [key: string]: string }[];
    const told: string[][] = [];
    for (const element of found) {
      const [id] = Object.values(element);
      const answers: string[] = [];
      for (const each of what) {
        answers.push((await this.command("GET", `/element/${id}/${each}`)) as string);
      }
      told.push(answers);
    }
    return told;
  }

  async resize({ width, height }: WindowSize): Promise<void> {
    await this.command("POST", "/window/rect", { x: 0, y: 0, width, height });
  }

  async end(): Promise<void> {
    await this.command("DELETE", "").catch(() => undefined);
    await Promise.all(this.processes.map(ended));
    // Its helper processes end a moment later, and write until then.
    for (let tries = 0; existsSync(this.home) && tries < 40; tries++) {
      try {
        rmSync(this.home, { recursive: true, force: true });
      } catch {
        await pause(250);
      }
    }
  }
}

async function ended(process: ChildProcess): Promise<void> {
  if (process.exitCode !== null || process.signalCode !== null) return;
  const gone = new Promise((done) => process.once("exit", done));
  process.kill();
  await gone;
}

async function send(
  address: string,
  method: string,
  path: string,
  body?: object,
): Promise<unknown> {
  const response = await fetch(`${address}${path}`, {
    method,
    headers: { "content-type": "application/json" },
    body: method === "POST" ? JSON.stringify(body ?? {}) : null,
  });
  const { value } = (await response.json()) as Answer;
  if (!response.ok) {
    const { error, message } = value as { error: string; message: string };
    throw new Error(`WebDriver, ${path}: ${error}: ${message}`);
  }
  return value;
}

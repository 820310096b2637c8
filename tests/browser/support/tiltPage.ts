import type { CDPSession, Locator, Page } from "playwright-core";

/** Even numbers between −1 and 1, always the same. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
}

export interface Held {
  /** Degrees, as a deviceorientation event has them. */
  readonly beta: number;
  readonly gamma: number;
  /** Half-width of the noise on beta, degrees. */
  readonly noise?: number;
}

/** The tilt screen of a reading, and a phone in a simulated hand. */
export class TiltPage {
  #session: CDPSession | null = null;
  #held: Held | null = null;
  #feeding: Promise<void> | null = null;
  readonly #noise = noise(20_080_101);

  constructor(readonly page: Page) {}

  get dialog(): Locator {
    return this.page.getByRole("dialog");
  }

  get degrees(): Locator {
    return this.dialog.locator(".tilt-degrees");
  }

  button(name: string | RegExp): Locator {
    return this.dialog.getByRole("button", { name });
  }

  async open(): Promise<void> {
    await this.page.getByRole("button", { name: "Measure with this phone's tilt" }).click();
    await this.dialog.waitFor();
  }

  /** Puts the phone as given, and keeps it so until it is put otherwise or let go. */
  async hold(held: Held): Promise<void> {
    this.#held = held;
    this.#session ??= await this.page.context().newCDPSession(this.page);
    this.#feeding ??= this.#feed(this.#session);
  }

  async #feed(session: CDPSession): Promise<void> {
    while (this.#held !== null) {
      const { beta, gamma, noise: half = 0.2 } = this.#held;
      await session.send("DeviceOrientation.setDeviceOrientationOverride", {
        alpha: 12,
        beta: beta + half * this.#noise(),
        gamma,
      });
      await new Promise((done) => setTimeout(done, 10));
    }
  }

  async letGo(): Promise<void> {
    this.#held = null;
    await this.#feeding;
  }

  /** Takes a reading; resolves with what the screen says of it. */
  async take(): Promise<string> {
    await this.button(/^Take it/).click();
    await this.button("Hold still …").waitFor();
    const said = this.dialog.locator(".tilt-actions .notice");
    await this.button(/^Take it again/).waitFor();
    return (await said.textContent()) ?? "";
  }
}

/** A browser whose question for the sensor is answered so. */
export async function answerTiltQuestion(page: Page, answer: "granted" | "denied"): Promise<void> {
  await page.addInitScript((given) => {
    for (const name of ["DeviceOrientationEvent", "DeviceMotionEvent"]) {
      const event: unknown = Reflect.get(globalThis, name);
      if (typeof event === "function") {
        Object.assign(event, { requestPermission: async () => given });
      }
    }
  }, answer);
}

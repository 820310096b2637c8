interface Timer {
  readonly id: number;
  readonly at: number;
  readonly every: number | null;
  run(): void;
}

const RealDate = Date;
const realNow = performance.now.bind(performance);
const real = { setTimeout, clearTimeout, setInterval, clearInterval };

/**
 * A clock that stands still until it is set or moved on. Setting it changes the date alone, as on a phone;
 * timers and `performance` go by what has passed. `toFake: ["Date"]` leaves those as they are.
 */
export class FakeClock {
  /** Passed since it was installed, ms. */
  #passed = 0;
  /** The date when nothing had passed. */
  #begin = 0;
  #last = 1_000_000;
  #installed = false;
  readonly #timers = new Map<number, Timer>();

  install({
    toFake,
    now,
  }: {
    readonly toFake?: readonly string[];
    readonly now?: Date;
  } = {}): void {
    this.#installed = true;
    this.#passed = 0;
    this.#begin = (now ?? new RealDate()).getTime();
    const dateNow = () => this.#begin + this.#passed;
    globalThis.Date = class extends RealDate {
      constructor(...given: []) {
        if (given.length === 0) super(dateNow());
        else super(...given);
      }
      static override now(): number {
        return dateNow();
      }
    } as DateConstructor;
    if (toFake !== undefined && !toFake.includes("setTimeout")) return;
    const start = (run: () => void, ms: number, every: boolean) => {
      this.#last += 1;
      const id = this.#last;
      const wait = Math.max(0, Number(ms) || 0);
      this.#timers.set(id, {
        id,
        at: this.#passed + wait,
        every: every ? Math.max(1, wait) : null,
        run,
      });
      return id;
    };
    const stop = (id: unknown) => void this.#timers.delete(Number(id));
    performance.now = () => this.#passed;
    Object.assign(globalThis, {
      setTimeout: (run: () => void, ms: number) => start(run, ms, false),
      setInterval: (run: () => void, ms: number) => start(run, ms, true),
      clearTimeout: stop,
      clearInterval: stop,
    });
  }

  set(time: number): void {
    if (!this.#installed) this.install({ toFake: ["Date"] });
    this.#begin = time - this.#passed;
  }

  async advance(ms: number): Promise<void> {
    const end = this.#passed + ms;
    for (;;) {
      await new Promise((done) => real.setTimeout(done, 0));
      const [next] = [...this.#timers.values()]
        .filter(({ at }) => at <= end)
        .sort((a, b) => a.at - b.at || a.id - b.id);
      if (next === undefined) break;
      this.#passed = Math.max(this.#passed, next.at);
      if (next.every === null) this.#timers.delete(next.id);
      else this.#timers.set(next.id, { ...next, at: this.#passed + next.every });
      next.run();
    }
    this.#passed = end;
    await new Promise((done) => real.setTimeout(done, 0));
  }

  uninstall(): void {
    if (!this.#installed) return;
    this.#installed = false;
    this.#timers.clear();
    globalThis.Date = RealDate;
    performance.now = realNow;
    Object.assign(globalThis, real);
  }
}

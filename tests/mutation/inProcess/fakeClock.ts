interface Timer {
  readonly id: number;
  readonly at: number;
  readonly every: number | null;
  run(): void;
}

const RealDate = Date;
const real = { setTimeout, clearTimeout, setInterval, clearInterval };

/** A clock that stands still until it is set or moved on; `toFake: ["Date"]` leaves timers as they are. */
export class FakeClock {
  #now = 0;
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
    this.#now = (now ?? new RealDate()).getTime();
    const clock = this;
    globalThis.Date = class extends RealDate {
      constructor(...given: []) {
        if (given.length === 0) super(clock.#now);
        else super(...given);
      }
      static override now(): number {
        return clock.#now;
      }
    } as DateConstructor;
    if (toFake !== undefined && !toFake.includes("setTimeout")) return;
    const start = (run: () => void, ms: number, every: boolean) => {
      this.#last += 1;
      const id = this.#last;
      const wait = Math.max(0, Number(ms) || 0);
      this.#timers.set(id, {
        id,
        at: this.#now + wait,
        every: every ? Math.max(1, wait) : null,
        run,
      });
      return id;
    };
    const stop = (id: unknown) => void this.#timers.delete(Number(id));
    Object.assign(globalThis, {
      setTimeout: (run: () => void, ms: number) => start(run, ms, false),
      setInterval: (run: () => void, ms: number) => start(run, ms, true),
      clearTimeout: stop,
      clearInterval: stop,
    });
  }

  set(time: number): void {
    if (!this.#installed) this.install({ toFake: ["Date"] });
    this.#now = time;
  }

  async advance(ms: number): Promise<void> {
    const end = this.#now + ms;
    for (;;) {
      await new Promise((done) => real.setTimeout(done, 0));
      const [next] = [...this.#timers.values()]
        .filter(({ at }) => at <= end)
        .sort((a, b) => a.at - b.at || a.id - b.id);
      if (next === undefined) break;
      this.#now = Math.max(this.#now, next.at);
      if (next.every === null) this.#timers.delete(next.id);
      else this.#timers.set(next.id, { ...next, at: this.#now + next.every });
      next.run();
    }
    this.#now = end;
    await new Promise((done) => real.setTimeout(done, 0));
  }

  uninstall(): void {
    if (!this.#installed) return;
    this.#installed = false;
    this.#timers.clear();
    globalThis.Date = RealDate;
    Object.assign(globalThis, real);
  }
}

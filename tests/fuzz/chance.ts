/** Seeded chance for fuzzing: mulberry32 (public domain, T. Ettinger), small and quick. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** 0 … 2³² − 1. */
  integer(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  }

  /** 0 … most − 1; 0 where most is 0. */
  below(most: number): number {
    return most <= 0 ? 0 : this.integer() % most;
  }

  /** True once in so many times. */
  once(inTimes: number): boolean {
    return this.below(inTimes) === 0;
  }

  pick<Item>(items: readonly Item[]): Item {
    return items[this.below(items.length)] as Item;
  }

  bytes(length: number): Uint8Array {
    return Uint8Array.from({ length }, () => this.integer() & 0xff);
  }
}

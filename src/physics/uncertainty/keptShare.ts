import { stretch } from "./closingDraws.ts";

/** The share of all draws that conforms, counted no further than what is asked of it takes. */
export class KeptShare {
  readonly #samples: number;
  readonly #lostBetween: (from: number, end: number) => number;
  #drawn = 0;
  #lost = 0;

  /** @param lostBetween how many of some draws do not conform */
  constructor(samples: number, lostBetween: (from: number, end: number) => number) {
    this.#samples = samples;
    this.#lostBetween = lostBetween;
  }

  isAtLeast(share: number): boolean {
    return this.#tells(share, this.#samples) ?? this.value() >= share;
  }

  isAbove(share: number): boolean {
    while (this.#drawn < this.#samples && this.#least() <= share && this.#most() > share)
      this.#draw();
    return this.#least() > share;
  }

  /** Is it below a share, as far as its first draws tell? */
  isBelow(share: number, draws: number): boolean {
    return this.#tells(share, draws) === false;
  }

  value(): number {
    while (this.#drawn < this.#samples) this.#draw();
    return this.#most();
  }

  /** Is it at least a share? Null where that many draws do not tell. */
  #tells(share: number, draws: number): boolean | null {
    for (;;) {
      if (this.#most() < share) return false;
      if (this.#least() >= share) return true;
      if (this.#drawn >= draws) return null;
      this.#draw();
    }
  }

  #least(): number {
    return (this.#drawn - this.#lost) / this.#samples;
  }

  #most(): number {
    return (this.#samples - this.#lost) / this.#samples;
  }

  #draw(): void {
    const end = Math.min(this.#samples, this.#drawn + stretch);
    this.#lost += this.#lostBetween(this.#drawn, end);
    this.#drawn = end;
  }
}

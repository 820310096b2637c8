import type { JudgedCheck } from "./judgement.ts";
import type { DrawnScreening, Screening } from "./screening.ts";

/** A screening by closings that hands over to the assessment where they turn out not to decide. */
export class CheckedScreening implements Screening {
  readonly contact: Screening["contact"];
  readonly #drawn: DrawnScreening;
  readonly #assess: () => Screening;
  #assessed: Screening | null = null;

  constructor(drawn: DrawnScreening, assess: () => Screening) {
    this.contact = drawn.contact;
    this.#drawn = drawn;
    this.#assess = assess;
  }

  isFine(...asked: Parameters<Screening["isFine"]>): boolean {
    return this.#of((screening) => screening.isFine(...asked));
  }

  isOut(...asked: Parameters<Screening["isOut"]>): boolean {
    return this.#of((screening) => screening.isOut(...asked));
  }

  checks(): readonly JudgedCheck[] {
    return this.#of((screening) => screening.checks());
  }

  leastProbability(): number {
    return this.#of((screening) => screening.leastProbability());
  }

  #of<Value>(asked: (screening: Screening) => Value): Value {
    if (!this.#drawn.escaped) {
      const value = asked(this.#drawn);
      if (!this.#drawn.escaped) return value;
    }
    this.#assessed ??= this.#assess();
    return asked(this.#assessed);
  }
}

import type { CornerAtMeans } from "../budget/cornerAtMeans.ts";
import type { ReadingDraws } from "./readingDraws.ts";
import type { SharedDraws } from "./sharedDraws.ts";

/** Draws whose readings are laid out at a time: few enough for a small processor's nearest memory. */
const blockLength = 250;

/** The readings of a corner's draws, one draw after the other, laid out block by block. */
export class ReadingBlocks {
  /** What `readingsOf` points into; taken anew as draws go on. */
  readonly block: Float64Array;
  readonly #samples: number;
  /** How many readings a draw has. */
  readonly #places: number;
  /** Places whose reading is in doubt, and its draws. */
  #moving: readonly { readonly place: number; readonly draws: ReadingDraws }[];
  #blockFrom = Number.NEGATIVE_INFINITY;

  constructor({ places, means }: Pick<CornerAtMeans, "places" | "means">, draws: SharedDraws) {
    this.#samples = draws.samples;
    this.#places = means.length;
    this.#moving = places.all.flatMap(({ drawn }, place) =>
      drawn.halfWidth === 0 && drawn.standardError === 0 ? [] : [{ place, draws: draws.of(drawn) }],
    );
    this.block = new Float64Array(blockLength * this.#places);
    for (let at = 0; at < this.block.length; at += this.#places) this.block.set(means, at);
  }

  /** To be called before the first draw: places that nobody asks for keep their means. */
  leaveOut(unasked: (place: number) => boolean): void {
    this.#moving = this.#moving.filter(({ place }) => !unasked(place));
  }

  /** Where the readings of a draw begin in the block; draws come one after the other. */
  readingsOf(draw: number): number {
    if (draw >= this.#blockFrom + blockLength) this.#layOut(draw);
    return (draw - this.#blockFrom) * this.#places;
  }

  /** Lays out the readings of a block, reading by reading. */
  #layOut(from: number): void {
    const { block } = this;
    const places = this.#places;
    const count = Math.min(blockLength, this.#samples - from);
    this.#blockFrom = from;
    for (const { place, draws } of this.#moving) {
      const { mean, halfWidth, rectangular, standardError, normal } = draws;
      for (let draw = 0, at = place; draw < count; draw++, at += places) {
        block[at] = mean + halfWidth * rectangular[from + draw];
      }
      if (normal === null) continue;
      for (let draw = 0, at = place; draw < count; draw++, at += places) {
        block[at] = block[at] + standardError * normal[from + draw];
      }
    }
  }
}

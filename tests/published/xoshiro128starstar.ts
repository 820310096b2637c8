import { RandomSource } from "../../src/physics/uncertainty/randomSource.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Output of the authors' reference program xoshiro128starstar.c 1.1 from the state 1, 2, 3, 4, as quoted
 * in the tests of the Rust crate rand_xoshiro.
 */
const reference = [
  11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
  4258142804,
];

export const xoshiro128starstar = publishedSource(
  "Blackman & Vigna, xoshiro128starstar.c 1.1, as in the crate rand_xoshiro",
  "met",
  (published) => {
    published("ten numbers from the state 1, 2, 3, 4", reference.join(" "), () => {
      const source = new RandomSource([1, 2, 3, 4]);
      return reference.map(() => source.nextInteger()).join(" ");
    });
  },
);

import { gentModulus } from "../../src/physics/estimates/rubberBlock.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Gent, Rubber Chem. Technol. 31 (1958) 896: E = 0.0981(56 + 7.62336 S)/(0.137505(254 − 2.54 S)) MPa,
 * worked by hand at four hardnesses, numerator and denominator apart.
 */
export const gent1958 = publishedSource(
  "Gent, Rubber Chem. Technol. 31 (1958) 896",
  "met",
  (published) => {
    const worked: readonly (readonly [hardness: number, modulus: number])[] = [
      [20, (0.0981 * 208.4672) / (0.137505 * 203.2)],
      [40, (0.0981 * 360.9344) / (0.137505 * 152.4)],
      [50, (0.0981 * 437.168) / (0.137505 * 127)],
      [70, (0.0981 * 589.6352) / (0.137505 * 76.2)],
    ];
    for (const [hardness, modulus] of worked) {
      published(`E of Shore A ${hardness}, MPa`, modulus, () => gentModulus(hardness), 1e-12);
    }
  },
);

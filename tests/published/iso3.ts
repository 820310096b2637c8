import { stiffnessClasses, stiffnessClassOf } from "../../src/physics/stop/stiffnessClass.ts";
import { publishedSource } from "./support/published.ts";

/** Where the class named for a rate changes from one number to the next, N/mm, by halving. */
function boundaryAbove(index: number): number {
  let low = stiffnessClasses[index] as number;
  let high = stiffnessClasses[index + 1] as number;
  const lower = low;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (stiffnessClassOf(middle) === lower) low = middle;
    else high = middle;
  }
  return high;
}

/* ISO 3:1973, preferred numbers, series R5: 1.00 1.60 2.50 4.00 6.30 in each decade. */
export const iso3 = publishedSource("ISO 3:1973, series R5", "met", (published) => {
  const numbers = [10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000];
  published("stiffness classes of 10 to 1000 N/mm", numbers.join(" "), () =>
    stiffnessClasses.join(" "),
  );
  published("each class named for its own rate", numbers.join(" "), () =>
    numbers.map(stiffnessClassOf).join(" "),
  );
  numbers.slice(0, -1).forEach((stiffnessClass, index) => {
    const boundary = 10 ** ((index + 5.5) / 5);
    published(
      `bound above class ${stiffnessClass}: half-way in log10 between 10^(n/5), N/mm`,
      boundary,
      () => boundaryAbove(index),
      1e-9 * boundary,
    );
  });
  published("class of 0.3 N/mm, N/mm", 10, () => stiffnessClassOf(0.3));
  published("class of 2600 N/mm, N/mm", 1000, () => stiffnessClassOf(2600));
});

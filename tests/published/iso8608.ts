import { roadClasses } from "../../src/physics/choices.ts";
import {
  displacementPsd,
  roadVelocityIntensity,
  roughness,
} from "../../src/physics/road/roughness.ts";
import { publishedSource } from "./support/published.ts";

/* ISO 8608:2016, Table C.2 (read in a secondary source): geometric means at n0 = 0.1 cycle/m, w = 2. */
export const iso8608 = publishedSource("ISO 8608:2016, Table C.2", "met", (published) => {
  const means = { A: 16e-6, B: 64e-6, C: 256e-6, D: 1024e-6, E: 4096e-6 } as const;
  published("road classes that are used", "A B C D E", () => roadClasses.join(" "));
  for (const [roadClass, mean] of Object.entries(means) as [keyof typeof means, number][]) {
    published(`Gd(0.1 cycle/m) of class ${roadClass}, m³`, mean, () => roughness[roadClass]);
  }
  published(
    "Gd(n) of class C at n = 0.1 cycle/m, m³",
    256e-6,
    () => displacementPsd("C", 0.1),
    1e-15,
  );
  published(
    "Gd(n) of class C at n = 1 cycle/m, exponent 2, m³",
    2.56e-6,
    () => displacementPsd("C", 1),
    1e-15,
  );
  // One-sided PSD of the road's velocity at a speed, from the displacement PSD: half of it at any frequency.
  for (const frequency of [0.5, 3, 17]) {
    const speed = 20;
    const psd =
      ((2 * Math.PI * frequency) ** 2 * 1024e-6 * (frequency / speed / 0.1) ** -2) / speed;
    published(
      `white road velocity, class D at 20 m/s, from Gd at ${frequency} Hz, m²/s`,
      psd / 2,
      () => roadVelocityIntensity("D", speed),
      1e-12 * psd,
    );
  }
});

import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { demoCorners, loadedSetup, unwrapped } from "../physics/demoFitments.ts";
import { publishedSource } from "./support/published.ts";

/*
 * A sinusoidal hump of 0.12 m × 4.8 m at 30 km/h: about 0.5 g of vertical acceleration in a car (Belgian
 * Road Research Centre, e223_02; 0.3 to 0.8 g is let pass). The demo corners with their stops out of the
 * way, for what a car over a hump does not hit.
 */
export const sinusoidalHump = publishedSource(
  "Belgian Road Research Centre, e223_02",
  "met",
  (published) => {
    for (const { name, fitment, corner } of demoCorners) {
      published(
        `0.12 m × 4.8 m at 30 km/h, ${name}: greatest upward acceleration of the body, g`,
        0.55,
        () =>
          unwrapped(
            simulateImpact(
              { ...loadedSetup(fitment, corner), gapMm: 500, hardLimitMm: null },
              { kind: "obstacle", heightM: 0.12, lengthM: 4.8, speedKmPerH: 30 },
            ),
          ).result.peakAccelerationG,
        0.25,
      );
    }
  },
);

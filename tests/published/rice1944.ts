import {
  upcrossingsPerKm,
  zeroUpcrossingsPerSecond,
} from "../../src/physics/road/levelCrossings.ts";
import { travelVariance } from "../../src/physics/road/roadResponse.ts";
import { workedCase } from "./dahlberg1978.ts";
import { byLyapunov } from "./support/lyapunovCar.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Rate of level crossings, Rice, Bell Syst. Tech. J. 23/24 (1944/45): (σ̇/2πσ)·exp(−z²/2σ²) (from
 * memory), with σ and σ̇ from the Lyapunov equation. That a long simulation counts as many is a test of
 * its own (tests/physics/road/simulatedRoad.test.ts).
 */
export const rice1944 = publishedSource(
  "Rice, Bell Syst. Tech. J. 23/24 (1944/45)",
  "from memory",
  (published) => {
    const speed = 60 / 3.6;
    const intensity = 2 * Math.PI ** 2 * 0.1 ** 2 * 256e-6 * speed;
    const { travel, travelSpeed } = byLyapunov(workedCase, intensity);
    const perSecond = Math.sqrt(travelSpeed / travel) / (2 * Math.PI);
    const zeroUpcrossings = () => zeroUpcrossingsPerSecond(240_000, 560);
    published("upcrossings of rest per second", perSecond, zeroUpcrossings, 1e-7 * perSecond);
    for (const multiple of [0, 1, 2, 3, 4]) {
      const perKm = (perSecond * Math.exp(-(multiple ** 2) / 2) * 1000) / speed;
      const sigmaMm = () => 1000 * Math.sqrt(travelVariance(intensity, 560, 2700));
      published(
        `upcrossings of ${multiple}σ per km`,
        perKm,
        () =>
          upcrossingsPerKm(multiple * sigmaMm(), {
            sigma: sigmaMm(),
            zeroUpcrossings: zeroUpcrossings(),
            speed,
            kurtosis: 3,
          }),
        1e-7 * perKm,
      );
    }
  },
);

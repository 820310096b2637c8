import {
  type LinearQuarterCar,
  sprungAccelerationVariance,
  travelSpeedVariance,
  travelVariance,
  tyreDeflectionVariance,
} from "../../src/physics/road/roadResponse.ts";
import { roadVelocityIntensity } from "../../src/physics/road/roughness.ts";
import { Noise } from "../physics/stopTests/generatedTests.ts";
import { byLyapunov } from "./support/lyapunovCar.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Closed-form variances of the quarter car on white-noise road velocity, the subject of Dahlberg,
 * J. Sound Vib. 58 (1978) 179, and Gobbi, Levi & Mastinu, J. Sound Vib. 298 (2006) 1055. The worked case
 * was derived elsewhere, symbolically and by the Lyapunov equation; the Lyapunov equation is solved here
 * with mathjs, for that case and for cars of all kinds.
 */

export function byClosedForm(car: LinearQuarterCar, intensity: number) {
  return {
    travel: travelVariance(intensity, car.sprungMass + car.unsprungMass, car.damping),
    travelSpeed: travelSpeedVariance(intensity, car.tyreRate, car.damping),
    sprung: sprungAccelerationVariance(intensity, car),
    tyre: tyreDeflectionVariance(intensity, car),
  };
}

export const workedCase: LinearQuarterCar = {
  sprungMass: 505,
  unsprungMass: 55,
  wheelRate: 28_000,
  tyreRate: 240_000,
  damping: 2700,
};
const intensity = () => roadVelocityIntensity("C", 60 / 3.6);

const names = ["travel", "travelSpeed", "sprung", "tyre"] as const;

/** Greatest relative difference to the Lyapunov solution over 40 seeded cars. */
function worstOf(name: (typeof names)[number]): number {
  const noise = new Noise(1978);
  const between = (low: number, high: number) => low * (high / low) ** noise.uniform();
  let worst = 0;
  for (let index = 0; index < 40; index++) {
    const car: LinearQuarterCar = {
      sprungMass: between(100, 3000),
      unsprungMass: between(15, 400),
      wheelRate: between(5e3, 2e5),
      tyreRate: between(5e4, 1e6),
      damping: between(300, 2e4),
    };
    const wanted = byLyapunov(car, intensity())[name];
    worst = Math.max(worst, Math.abs(byClosedForm(car, intensity())[name] / wanted - 1));
  }
  return worst;
}

export const dahlberg1978 = publishedSource(
  "Dahlberg, J. Sound Vib. 58 (1978) 179; Gobbi, Levi & Mastinu 298 (2006) 1055",
  "met",
  (published) => {
    const at = "class C at 60 km/h";
    const worked = () => byClosedForm(workedCase, intensity());
    published(`var(suspension travel), ${at}, m²`, 8.73399e-5, () => worked().travel, 5e-11);
    published(`var(tyre deflection), ${at}, m²`, 1.364585e-5, () => worked().tyre, 5e-12);
    published(`var(sprung acceleration), ${at}, m²/s⁴`, 1.338494, () => worked().sprung, 5e-7);
    const words = {
      travel: "suspension travel",
      travelSpeed: "speed of travel",
      sprung: "sprung acceleration",
      tyre: "tyre deflection",
    };
    for (const name of names) {
      const quantity = `var(${words[name]}), 40 cars: greatest share off the Lyapunov equation`;
      published(quantity, 0, () => worstOf(name), 1e-7);
    }
  },
);

import { coilSpringRate, solidLength } from "../../src/physics/estimates/coilSpring.ts";
import { pascalsPerPoundForcePerSquareInch, toModel } from "../../src/records/entry/units.ts";
import { unwrapped } from "../physics/demoFitments.ts";
import { publishedSource } from "./support/published.ts";

/*
 * Shigley, Mechanical Engineering Design, ch. 10, worked example (from memory, recomputed): wire
 * 0.037 in, mean coil 0.400 in, G 11.85 Mpsi, 10.5 active of 12.5 coils: 4.13 lbf/in.
 */
export const shigleyCoilSpring = publishedSource(
  "Shigley, Mechanical Engineering Design, ch. 10, worked example",
  "from memory",
  (published) => {
    const inch = toModel(1, "in");
    const exact = (value: number) => ({ value, tol: 0 });
    published(
      "rate of the worked spring, lbf/in",
      4.13,
      () =>
        unwrapped(
          coilSpringRate({
            wire: exact(0.037 * inch),
            meanCoil: exact(0.4 * inch),
            activeCoils: exact(10.5),
            shearModulus: exact((11.85e6 * pascalsPerPoundForcePerSquareInch) / 1e6),
          }),
        ).value / toModel(1, "lbf/in"),
      0.005,
    );
    published("solid length d·Nt, in", 0.4625, () => solidLength(0.037 * inch, 12.5) / inch, 1e-12);
  },
);

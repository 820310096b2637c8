import { describe, expect, it } from "vitest";
import { coilSpringRate, solidLength } from "../../src/physics/estimates/coilSpring.ts";

/*
 * Shigley, Mechanical Engineering Design, ch. 10, worked example (from memory, recomputed): wire
 * 0.037 in, mean coil 0.400 in, G 11.85 Mpsi, 10.5 active of 12.5 coils: 4.13 lbf/in.
 */

const inch = 25.4;
const newtonsPerMmPerPoundPerInch = 0.175126835246476;
const megapascalsPerPsi = 0.006894757293168;
const exact = (value: number) => ({ value, tol: 0 });

describe("coil spring (Shigley, ch. 10)", () => {
  const coil = {
    wire: exact(0.037 * inch),
    meanCoil: exact(0.4 * inch),
    activeCoils: exact(10.5),
    shearModulus: exact(11.85e6 * megapascalsPerPsi),
  };

  it("has the rate of the worked example, 4.13 lbf/in", () => {
    const rate = coilSpringRate(coil);
    if (!rate.ok) throw new Error(rate.fault.code);
    expect(rate.value.value / newtonsPerMmPerPoundPerInch).toBeCloseTo(4.13, 2);
    expect(rate.value.tol).toBe(0);
  });

  it("is pressed solid at wire times coils: 0.4625 in", () => {
    expect(solidLength(0.037 * inch, 12.5) / inch).toBeCloseTo(0.4625, 12);
  });
});

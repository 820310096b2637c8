import { standardGravity } from "../../physics/standardGravity.ts";
import { mmPerCentimetre, mmPerInch, newtonsPerPoundForce } from "../entry/units.ts";
import type { TestQuantity, TestUnit } from "./testFile.ts";

/** Exact factors to mm, N, mm/s and s (NIST SP 811, App. B.8). */
const units: { readonly [Unit in TestUnit]: readonly [quantity: TestQuantity, factor: number] } = {
  mm: ["depth", 1],
  cm: ["depth", mmPerCentimetre],
  m: ["depth", 1000],
  in: ["depth", mmPerInch],
  N: ["force", 1],
  kN: ["force", 1000],
  daN: ["force", 10],
  lbf: ["force", newtonsPerPoundForce],
  kgf: ["force", standardGravity],
  kip: ["force", 1000 * newtonsPerPoundForce],
  "mm/s": ["speed", 1],
  "cm/s": ["speed", mmPerCentimetre],
  "m/s": ["speed", 1000],
  "in/s": ["speed", mmPerInch],
  "mm/min": ["speed", 1 / 60],
  s: ["time", 1],
  ms: ["time", 0.001],
  min: ["time", 60],
};

const spellings: { readonly [spelling: string]: TestUnit } = {
  mm: "mm",
  millimetre: "mm",
  millimeter: "mm",
  millimetres: "mm",
  millimeters: "mm",
  cm: "cm",
  m: "m",
  in: "in",
  inch: "in",
  inches: "in",
  '"': "in",
  n: "N",
  newton: "N",
  newtons: "N",
  kn: "kN",
  dan: "daN",
  decanewton: "daN",
  kilonewton: "kN",
  kilonewtons: "kN",
  lbf: "lbf",
  lb: "lbf",
  lbs: "lbf",
  "lb-f": "lbf",
  pounds: "lbf",
  kgf: "kgf",
  kp: "kgf",
  kg: "kgf",
  kip: "kip",
  kips: "kip",
  klbf: "kip",
  "cm/s": "cm/s",
  "cm/sec": "cm/s",
  ips: "in/s",
  "mm/s": "mm/s",
  "mm/sec": "mm/s",
  "m/s": "m/s",
  "m/sec": "m/s",
  "in/s": "in/s",
  "in/sec": "in/s",
  "inch/s": "in/s",
  "mm/min": "mm/min",
  s: "s",
  sec: "s",
  secs: "s",
  second: "s",
  seconds: "s",
  ms: "ms",
  msec: "ms",
  milliseconds: "ms",
  min: "min",
};

/** The unit of this spelling, any case but for "M"; null where it is not known. */
export function testUnitOf(text: string): TestUnit | null {
  const plain = text
    .toLowerCase()
    .replace(/[\s.]/g, "")
    .replace("per", "/")
    .replace(/[·*]?s(?:\^|\*\*)?(?:-1|−1|⁻¹)$/, "/s");
  return Object.hasOwn(spellings, plain) ? (spellings[plain] ?? null) : null;
}

export function quantityOfUnit(unit: TestUnit): TestQuantity {
  return units[unit][0];
}

/** What a number in this unit is multiplied by to give mm, N, mm/s or s. */
export function testUnitFactor(unit: TestUnit): number {
  return units[unit][1];
}

/** The units a column of this quantity may be in, for a choice on screen and for sentences. */
export function unitsOfQuantity(quantity: TestQuantity): readonly TestUnit[] {
  return (Object.keys(units) as TestUnit[]).filter((unit) => units[unit][0] === quantity);
}

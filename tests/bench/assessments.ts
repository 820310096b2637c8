import { assessFitment, assessStatic } from "../../src/physics/assess.ts";
import { cornerDynamics } from "../../src/physics/stiffness/cornerDynamics.ts";
import { heightClassMap } from "../../src/physics/stiffness/heightClassMap.ts";
import { demoFitment, unwrapped } from "../physics/demoFitments.ts";
import { millisecondsPer, printTable } from "./clock.ts";

const names = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "damper-shaft",
  "strut-too-stiff",
  "two-arms-measured",
  "upper-arm-stop",
  "stop-on-the-arm-missing",
  "strut-and-arm",
  "checked-by-hand",
  "foam-stop-tested",
  "pressed-foam-on-a-rod",
] as const;

export function timeAssessments(): void {
  const rows = names.map((name) => {
    const fitment = demoFitment(name);
    const [first] = fitment.corners;
    if (first === undefined) throw new Error("no corner");
    const fixed = millisecondsPer(() => assessStatic(fitment), 500);
    const dynamic = millisecondsPer(() => {
      for (const corner of fitment.corners) cornerDynamics(fitment, corner);
    }, 500);
    const whole = millisecondsPer(() => assessFitment(fitment), 500);
    let cells = 0;
    const map = millisecondsPer(() => {
      cells = 0;
      for (const cell of unwrapped(heightClassMap(fitment, first)).cells()) {
        if (cell !== null) cells++;
      }
    }, 500);
    return [name, fitment.corners.length, fixed, dynamic, whole, 1000 / whole, cells, map];
  });
  printTable(
    "Whole assessments (20 000 draws, every event, eleven classes)",
    [
      "check",
      "corners",
      "static, ms",
      "dynamic, ms",
      "whole, ms",
      "whole, per s",
      "map cells",
      "map, ms",
    ],
    rows,
  );
}

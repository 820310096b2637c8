import { argv } from "node:process";
import { pathToFileURL } from "node:url";
import { assessFitment, type Fitment, type Reading } from "../../src/physics/index.ts";
import "../../src/saying/everyText.ts";
import { inModelUnits } from "../../src/saying/modelUnits.ts";

/*
 * The calculation as a library: one axle described, one question asked, through the door alone. This is how a
 * script of one's own begins: `npx tsx tests/physics/libraryExample.ts` prints the answer.
 */

const read = (tol: number, ...values: number[]): Reading => ({ values, tol });

export const front: Fitment = {
  use: "daily",
  layout: {
    kind: "arm",
    wheelPerOuter: 1,
    readings: {
      pivotToStop: read(1.5, 152, 153, 152),
      pivotToOuter: read(2, 411),
      armAngle: read(0.5, 8),
      stopLean: read(1, 5),
    },
  },
  corners: [
    {
      side: "left",
      gap: read(1, 21, 21.5),
      limits: [{ kind: "tyre", at: "wheel", reading: read(3, 168) }],
    },
  ],
  stop: {
    name: "Block 60",
    duty: "impact",
    freeHeight: read(0.5, 60),
    usableCompressionMm: 33,
    curve: [
      [5, 900],
      [12, 2500],
      [20, 5400],
      [28, 10_500],
      [33, 17_000],
    ],
    damping: null,
    testedAtSpeed: false,
  },
};

/** The answer for the left side, a line a figure; or why there is none. */
export function answerLines(fitment: Fitment): readonly string[] {
  const answer = assessFitment(fitment);
  if (!answer.ok) return [inModelUnits(answer.fault.sentence)];
  const [left] = answer.value.corners;
  return [
    `R = ${left?.leverRatio.toFixed(2)} : 1`,
    `contact after ${left?.wheelTravelToContactMm.toFixed(1)} mm`,
    `fully compressed after ${left?.wheelTravelToFullStopMm.toFixed(1)} mm`,
    ...(left?.checks ?? []).map(({ sentence }) => inModelUnits(sentence)),
  ];
}

if (import.meta.url === pathToFileURL(argv[1] ?? "").href)
  console.log(answerLines(front).join("\n"));

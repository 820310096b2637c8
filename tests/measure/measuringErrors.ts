import type { Layout, Reading } from "../../src/physics/fitment.ts";
import { measured, summary } from "../physics/measuring/simulatedMeasuring.ts";
import {
  type PublishedStop,
  publishedLayout,
  publishedStops,
} from "../published/publishedSuspensions.ts";

/*
 * How far full stop comes out wrong on published suspensions, by how the arm was measured: straight from
 * one pivot bolt's centre, as the guide said at first, and square to the pivot line, as it says now. Every
 * reading lies within its ± of what it should be. Printed by `npm run measuring`.
 */
const rounds = 15;

type Point = readonly [number, number, number];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const distance = (a: Point, b: Point): number => Math.hypot(...minus(a, b));

interface Arm {
  readonly front: Point;
  readonly rear: Point;
  readonly joint: Point;
}

/** The bolts and the joint of the arm with the stop; null where the arm turns about one point. */
function armOf({ stop, hardPointsMm }: PublishedStop): Arm | null {
  const points = hardPointsMm as { readonly [name: string]: number[] | undefined };
  const arm = stop.startsWith("upper") ? "uca" : "lca";
  const at = (name: string): Point | null => {
    const [x, y, z] = points[name] ?? [];
    return x === undefined || y === undefined || z === undefined ? null : [x, y, z];
  };
  const front = at(`${arm}_f`);
  const rear = at(`${arm}_b`);
  const joint = at(stop.startsWith("upper") ? "ubj" : "lbj");
  return front && rear && joint ? { front, rear, joint } : null;
}

/**
 * Where the stop meets the arm: a share of the way from the middle of the pivot line, or from the front bolt
 * along its leg, to the joint, and 30 mm above (20 on an upper arm). Placed so, it stands off the pivot
 * line by what the readings say.
 */
function contactOf({ stop }: PublishedStop, { front, rear, joint }: Arm): Point | null {
  const share = stop.includes("front leg")
    ? 0.5
    : Number(/ f(0\.\d)/.exec(stop)?.[1] ?? Number.NaN);
  if (Number.isNaN(share)) return null;
  const from: Point = stop.includes("front leg")
    ? front
    : [(front[0] + rear[0]) / 2, (front[1] + rear[1]) / 2, (front[2] + rear[2]) / 2];
  const to = minus(joint, from);
  const above = stop.startsWith("upper") ? 20 : 30;
  return [from[0] + share * to[0], from[1] + share * to[1], from[2] + share * to[2] + above];
}

/** The readings with both lengths straight from one bolt, and the wheel taken to rise with the joint. */
function fromOneBolt(stop: PublishedStop, bolt: "front" | "rear"): Layout | null {
  const arm = armOf(stop);
  const contact = arm === null ? null : contactOf(stop, arm);
  if (arm === null || contact === null) return null;
  const layout = publishedLayout(stop, ["otherArmAngle", "otherArmLength"]);
  const tape = (to: Point): Reading => ({ values: [distance(arm[bolt], to)], tol: 2 });
  const readings = {
    ...layout.readings,
    pivotToStop: tape(contact),
    pivotToOuter: tape(arm.joint),
  };
  return { ...layout, wheelPerOuter: 1, readings } as Layout;
}

const ways: readonly (readonly [string, (stop: PublishedStop) => Layout | null])[] = [
  ["as it was, front bolt", (stop) => fromOneBolt(stop, "front")],
  ["as it was, rear bolt", (stop) => fromOneBolt(stop, "rear")],
  [
    "square to the line, one arm",
    (stop) => publishedLayout(stop, ["otherArmAngle", "otherArmLength", "lowerArmLength"]),
  ],
  ["as it is, all measured", (stop) => publishedLayout(stop)],
];

const header = ["", "measurings", "rms mm", "mean mm", "worst mm", "band holds", "2 mm called ok"];

function row(name: string, stops: readonly PublishedStop[], way: (typeof ways)[number][1]): string {
  const results = stops.flatMap((stop) => {
    const layout = way(stop);
    if (layout === null) return [];
    return Array.from({ length: rounds }, (_, round) =>
      measured(stop, layout, `${stop.geometry} ${stop.stop} ${round + 1}`),
    );
  });
  if (results.length === 0) return "";
  const { count, rootMeanSquare, meanError, worst, holds, calledOk } = summary(results);
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const cells = [
    String(count),
    rootMeanSquare.toFixed(1),
    meanError.toFixed(1),
    worst.toFixed(1),
    percent(holds),
    percent(calledOk),
  ];
  return [name.padEnd(18), ...cells.map((cell) => cell.padStart(14))].join("");
}

for (const [words, way] of ways) {
  console.log(`\n${words}: full stop at 85 mm of wheel travel`);
  console.log(header.map((cell, at) => (at === 0 ? cell.padEnd(18) : cell.padStart(14))).join(""));
  for (const geometry of new Set(publishedStops.map((stop) => stop.geometry))) {
    const stops = publishedStops.filter((stop) => stop.geometry === geometry);
    const line = row(geometry, stops, way);
    if (line !== "") console.log(line);
  }
  console.log(row("all", publishedStops, way));
}

import { add, belowHorizontal, quarterTurn, tyreWidth } from "../shapes/geometry.ts";
import { Bar, Box, Joint, Line } from "../shapes/parts.tsx";
import type { LayoutOnScreen } from "./layoutOnScreen.ts";
import { lowerPositive } from "./lowerPositive.ts";
import { Knuckle, Rodded, type SceneProps, WheelAndBody } from "./sceneParts.tsx";
import { armPivot, telescopicPoints } from "./telescopicPoints.ts";

/** A strut that is no longer than most, eye to eye, mm. */
const usualLength = 460;

function StrutScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, head, foot, axis } = skeleton;
  const side = quarterTurn(axis);
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <Line
        view={view}
        points={[
          { x: -40, y: 110 },
          { x: 20, y: 130 },
          { x: 90, y: head.y - 120 },
          add(head, side, 110),
          add(head, side, -100),
        ]}
      />
      <Box view={view} low={{ x: -60, y: -26 }} high={{ x: 40, y: 110 }} round={10} />
      <Bar view={view} points={[pivot, outer]} width={34} />
      <Joint view={view} at={pivot} tone="context" />
      <Knuckle view={view} skeleton={skeleton} to={foot} />
      {detail && <Joint view={view} at={outer} tone="context" />}
      <Rodded view={view} skeleton={skeleton} freeHeight={freeHeight} strut />
    </g>
  );
}

const readings: LayoutOnScreen<"strut">["readings"] = {
  lowerArmLength: {
    words: () => ({
      name: "Length of the lower arm",
      how: "Square from the lower arm's pivot line (A) to the center of its ball joint (B).",
      wrong: "Taken from one bolt it comes out too long.",
      a: "pivot line",
      b: "ball joint, center",
    }),
  },
  lowerArmAngle: {
    words: () => ({
      name: "Angle of the lower arm",
      how: "Straight across the vehicle: between level and the line from the pivot line (A) to the ball joint (B).",
      wrong: "Not along the arm's edge, which is often bent.",
      a: "pivot line",
      b: "ball joint",
      note: lowerPositive,
    }),
  },
  jointToTop: {
    words: () => ({
      name: "Ball joint to top mount",
      how: "From the center of the lower ball joint (A) straight to the middle of the strut's top mount (B).",
      wrong: "To the middle of the mount's rubber, not to the top of the stud.",
      a: "ball joint, center",
      b: "middle of top mount",
    }),
  },
  jointToTopLean: {
    words: () => ({
      name: "Lean of that line",
      how: "Hold a plumb line at the top mount (B). Read the angle from it to the line to the ball joint (A).",
      wrong: "Not the strut's own lean: the ball joint often stands further out.",
      a: "ball joint",
      b: "top mount",
      note: "Top toward the middle is positive.",
      skipped: "Skip it and the strut's angle is used.",
    }),
  },
};

export const strut: LayoutOnScreen<"strut"> = {
  readings,
  words: {
    choice: {
      name: "On a strut",
      hint: "The strut carries the wheel; the stop sits on its rod.",
    },
    title: "Stop on a strut",
    description: "A strut carries the wheel; the stop sits on its rod, inside the spring.",
    short: "Strut",
    landing: "top of strut body",
    plusLean: "top toward the middle = +",
    lean: () => ({
      name: "Strut angle from vertical",
      how: "Between a plumb line and the line of the strut's rod (A to B), seen from front or rear.",
      wrong: "Not the spring: it may sit at an angle of its own. Hold the gauge along the body.",
      a: "lower end",
      b: "upper end",
      note: "Top toward the middle is positive. Upright: 0.",
      skipped: "Skip it and 0 is used.",
    }),
    movingMetal: "top of the arm",
    placeOnArm: null,
    closer: {
      lead: "A strut's wheel moves with the arm below it. Its length and angle make the answer sharper. Nothing is jacked.",
      legend: "Measure the lower arm too?",
    },
  },
  picture: {
    usualLean: 7,
    leanPair: "strutLean",
    values: { stopLean: 8, gap: 75, freeHeight: 120, rideHeight: 470 },
    bounds: ({ wheelCentre, head }) => [
      { x: -50, y: wheelCentre.y - 190 },
      { x: wheelCentre.x + tyreWidth / 2, y: head.y + 50 },
    ],
  },
  points(toStand) {
    const outer = add(armPivot, belowHorizontal(6), 330);
    const foot = add(outer, { x: 20, y: 115 });
    const wheelCentre = add(outer, { x: 160, y: 75 });
    const trueLength = usualLength;
    return telescopicPoints(toStand, { outer, bend: outer, foot, wheelCentre, trueLength });
  },
  Scene: StrutScene,
};

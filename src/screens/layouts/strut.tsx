import * as messages from "../../words/compiled/screens/layouts.ts";
import {
  add,
  belowHorizontal,
  distance,
  leaning,
  quarterTurn,
  tyreWidth,
} from "../shapes/geometry.ts";
import { down, leanAngle, lengthBetween, lineAngle, outboard } from "../shapes/measurement.ts";
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
      name: messages.lengthOfLowerArm,
      how: messages.squareFromLowerArms,
      wrong: messages.takenFromOneBolt,
      a: messages.pivotLine,
      b: messages.ballJointCenter,
    }),
    view: {
      from: "front",
      measure: ({ lowerPivot, lowerJoint }, { lowerArmAngle }) => ({
        ...lengthBetween(lowerPivot, lowerJoint, belowHorizontal(lowerArmAngle), down),
        offset: 46,
      }),
    },
  },
  lowerArmAngle: {
    words: () => ({
      name: messages.angleOfLowerArm,
      how: messages.straightAcrossVehicleBetween,
      wrong: messages.notAlongArmsEdge,
      a: messages.pivotLine,
      b: messages.ballJoint,
      note: lowerPositive,
    }),
    view: {
      from: "front",
      measure: ({ lowerPivot, lowerJoint }, { lowerArmAngle }) =>
        lineAngle(lowerPivot, lowerArmAngle, distance(lowerPivot, lowerJoint)),
    },
    tilt: "line",
  },
  jointToTop: {
    words: () => ({
      name: messages.ballJointToTop,
      how: messages.fromCenterOfLower,
      wrong: messages.toMiddleOfMounts,
      a: messages.ballJointCenter,
      b: messages.middleOfTopMount,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint, top }, { jointToTopLean }) => ({
        ...lengthBetween(lowerJoint, top ?? lowerJoint, leaning(jointToTopLean), outboard),
        offset: 60,
      }),
    },
  },
  jointToTopLean: {
    words: () => ({
      name: messages.leanOfThatLine,
      how: messages.holdPlumbLineAt,
      wrong: messages.notStrutsOwnLean,
      a: messages.ballJoint,
      b: messages.topMount,
      note: messages.topTowardMiddleIs,
      skipped: messages.skipItAndStruts,
    }),
    view: {
      from: "front",
      measure: ({ lowerJoint }, { jointToTop, jointToTopLean }) =>
        leanAngle(lowerJoint, jointToTopLean, jointToTop),
    },
  },
};

export const strut: LayoutOnScreen<"strut"> = {
  readings,
  words: {
    choice: {
      name: messages.onStrut,
      hint: messages.strutCarriesWheelStop,
    },
    title: messages.stopOnStrut,
    description: messages.strutCarriesWheelStopSits,
    short: messages.strut,
    landing: messages.topOfStrutBody,
    plusLean: messages.topTowardMiddle,
    lean: () => ({
      name: messages.strutAngleFromVertical,
      how: messages.betweenPlumbLineAndLineOf,
      wrong: messages.notSpringItMay,
      a: messages.lowerEnd,
      b: messages.upperEnd,
      note: messages.topTowardMiddleIsPositive,
      skipped: messages.skipItAnd0,
    }),
    movingMetal: messages.topOfArm,
    placeOnArm: null,
    closer: {
      lead: messages.strutsWheelMovesWith,
      legend: messages.measureLowerArmToo,
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

import * as messages from "../../words/compiled/screens/layouts.ts";
import {
  add,
  belowHorizontal,
  distance,
  quarterTurn,
  tyreRadius,
  tyreWidth,
} from "../shapes/geometry.ts";
import { Bar, Body, Joint, Line, Plate, StopShape } from "../shapes/parts.tsx";
import type { LayoutOnScreen } from "./layoutOnScreen.ts";
import { leanOfStop } from "./leanOfStop.ts";
import { otherArmWords } from "./otherArmWords.ts";
import { ArmBar, ContextSpring, Knuckle, type SceneProps, WheelAndBody } from "./sceneParts.tsx";
import { wheelCentreOf } from "./skeleton.ts";
import { armPivot } from "./telescopicPoints.ts";

/** From an arm's pad down to the middle of the arm. */
const padDepth = 30;

function ArmScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, bend, pad, stopFace, stopTop, axis, wheelCentre, stopHeight } = skeleton;
  const { stopOnArm } = skeleton;
  const side = quarterTurn(axis);
  const upperJoint = { x: wheelCentre.x - 140, y: wheelCentre.y + 165 };
  const onFrame = stopOnArm ? pad : stopTop;
  const onArm = stopOnArm ? stopTop : pad;
  const railTop = onFrame.y + 95;
  const railOut = onFrame.x + 58;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      {detail && !skeleton.fromSide && <ContextSpring view={view} skeleton={skeleton} />}
      <Knuckle view={view} skeleton={skeleton} to={upperJoint} />
      {!skeleton.fromSide && (
        <Bar
          view={view}
          points={[upperJoint, { x: Math.min(70, upperJoint.x - 80), y: railTop + 60 }]}
          width={26}
        />
      )}
      <Line
        view={view}
        closed
        points={[
          { x: -40, y: -22 },
          { x: 34, y: -22 },
          { x: 40, y: onFrame.y + 8 },
          add(add(onFrame, axis, 8), side, 50),
          add(add(onFrame, axis, 8), side, -50),
          { x: railOut, y: onFrame.y + 22 },
          { x: railOut, y: railTop },
          { x: -40, y: railTop },
        ]}
      />
      <ArmBar view={view} skeleton={skeleton} />
      <Body view={view} from={add(bend, axis, 8)} to={onArm} axis={axis} half={34} />
      <Joint view={view} at={pivot} />
      {detail && <Joint view={view} at={outer} />}
      <Plate view={view} middle={add(onFrame, axis, 4)} axis={axis} half={44} />
      {skeleton.stop !== "missing" && (
        <StopShape
          view={view}
          top={stopTop}
          axis={stopOnArm ? { x: -axis.x, y: -axis.y } : axis}
          height={distance(stopFace, stopTop)}
          freeHeight={Math.max(stopHeight, freeHeight)}
        />
      )}
    </g>
  );
}

export const arm: LayoutOnScreen<"arm"> = {
  readings: {},
  words: {
    choice: {
      name: messages.onArm,
      hint: messages.stopMeetsControlArm,
    },
    title: messages.stopOnArm,
    description: messages.controlArmSwingsUp,
    short: messages.stopOnArm,
    landing: messages.padOnArm,
    landingOfStopOnArm: messages.padOnFrame,
    lean: ({ armRole }) => ({
      ...leanOfStop(armRole),
      note: messages.topTowardFront({ armRole }),
    }),
    movingMetal: messages.topOfArm,
    placeOnArm: { value: "nearStop", name: messages.atStopsPlaceOn },
    closer: otherArmWords,
  },
  picture: {
    usualLean: 0,
    leanPair: "stopLean",
    values: {
      pivotToStop: 190,
      pivotToOuter: 420,
      armAngle: 9,
      gap: 40,
      freeHeight: 105,
      rideHeight: 470,
    },
    bounds: ({ wheelCentre, stopTop }) => [
      { x: -50, y: wheelCentre.y - (tyreRadius + 14) },
      { x: wheelCentre.x + tyreWidth / 2, y: stopTop.y + 100 },
    ],
  },
  points(toStand) {
    const { numbers, axis, stopOnArm } = toStand;
    const { stop, gap, height } = toStand.stand;
    const pivot = armPivot;
    const outer = add(pivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter);
    const touched = add(pivot, belowHorizontal(numbers.stopLineAngle), numbers.pivotToStop);
    const pad = stopOnArm ? add(touched, axis, gap) : touched;
    const stopFace = stopOnArm ? touched : add(pad, axis, gap);
    const stopTop = add(stopFace, axis, stopOnArm ? -height : height);
    const onArm = stopOnArm ? stopTop : pad;
    const head = stopOnArm ? pad : stopTop;
    const damperFoot = add(pivot, belowHorizontal(numbers.armAngle), 0.72 * numbers.pivotToOuter);
    return {
      pivot,
      outer,
      bend: add(onArm, axis, -padDepth),
      foot: stopOnArm ? stopFace : pad,
      pad,
      stopFace,
      stopTop,
      head,
      stopHeight: height,
      stop,
      stopOnArm,
      wheelCentre: wheelCentreOf(toStand, outer),
      damperFoot,
      damperHead: add(damperFoot, { x: -60, y: 400 }),
    };
  },
  Scene: ArmScene,
};

import * as messages from "../../words/compiled/screens/layouts.ts";
import { add, belowHorizontal, tyreWidth } from "../shapes/geometry.ts";
import { Joint, Line } from "../shapes/parts.tsx";
import type { LayoutOnScreen } from "./layoutOnScreen.ts";
import { leanSeen } from "./leanOfStop.ts";
import { otherArmWords } from "./otherArmWords.ts";
import { ArmBar, Knuckle, Rodded, type SceneProps, WheelAndBody } from "./sceneParts.tsx";
import { wheelCentreOf } from "./skeleton.ts";
import { armPivot, telescopicPoints } from "./telescopicPoints.ts";

function DamperScene({ view, skeleton, freeHeight, detail = true, wheelTone }: SceneProps) {
  const { pivot, outer, head, wheelCentre } = skeleton;
  const top = head.y + 40;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <Knuckle view={view} skeleton={skeleton} to={add(wheelCentre, { x: -140, y: 150 })} />
      <Line
        view={view}
        closed
        points={[
          { x: -40, y: -22 },
          { x: 34, y: -22 },
          { x: 34, y: head.y - 46 },
          { x: head.x + 50, y: head.y + 6 },
          { x: head.x + 50, y: top },
          { x: -40, y: top },
        ]}
      />
      <ArmBar view={view} skeleton={skeleton} />
      <Joint view={view} at={pivot} />
      {detail && <Joint view={view} at={outer} />}
      <Rodded view={view} skeleton={skeleton} freeHeight={freeHeight} strut={false} />
    </g>
  );
}

export const damper: LayoutOnScreen<"damper"> = {
  readings: {},
  words: {
    choice: {
      name: messages.onShocksRod,
      hint: messages.stopSitsOnRod,
    },
    title: messages.stopOnShock,
    description: messages.shockStandsOnArm,
    short: messages.stopOnShockRod,
    landing: messages.topOfShockBody,
    lean: ({ armRole }) => ({
      name: messages.shockAngleFromVertical,
      how: messages.betweenPlumbLineAnd({ leanSeen: leanSeen(armRole) }),
      wrong: messages.springAroundItMay,
      a: messages.lowerEnd,
      b: messages.upperEnd,
      note: messages.topTowardPivotIs,
      skipped: messages.skipItAnd0,
    }),
    movingMetal: messages.topOfArm,
    placeOnArm: { value: "mount", name: messages.atShocksLowerMount },
    closer: otherArmWords,
  },
  picture: {
    usualLean: 12,
    leanPair: "damperLean",
    values: {
      pivotToMount: 270,
      pivotToOuter: 420,
      stopLean: 14,
      damperLength: 470,
      gap: 70,
      freeHeight: 115,
      rideHeight: 470,
    },
    bounds: ({ wheelCentre, head }) => [
      { x: -50, y: wheelCentre.y - 190 },
      { x: wheelCentre.x + tyreWidth / 2, y: head.y + 50 },
    ],
  },
  points(toStand) {
    const { numbers } = toStand;
    const outer = add(armPivot, belowHorizontal(numbers.armAngle), numbers.pivotToOuter);
    const foot = add(armPivot, belowHorizontal(numbers.mountLineAngle), numbers.pivotToMount);
    const wheelCentre = wheelCentreOf(toStand, outer);
    const trueLength = numbers.damperLength;
    return telescopicPoints(toStand, { outer, bend: foot, foot, wheelCentre, trueLength });
  },
  Scene: DamperScene,
};

import * as messages from "../../words/compiled/screens/layouts.ts";
import { add, distance, type Point, tyreRadius, type View } from "../shapes/geometry.ts";
import { acrossFromLeft, down } from "../shapes/measurement.ts";
import { Bar, Body, Box, Disc, Line, Plate, StopShape, type Tone } from "../shapes/parts.tsx";
import type { LayoutOnScreen } from "./layoutOnScreen.ts";
import { leanOfStop } from "./leanOfStop.ts";
import { ContextSpring, type SceneProps, WheelAndBody } from "./sceneParts.tsx";
import { axleTubeRadius } from "./skeleton.ts";

function mirrored(point: Point): Point {
  return { x: -point.x, y: point.y };
}

function AxleScene(props: SceneProps) {
  const { view, skeleton, detail = true, wheelTone } = props;
  const { wheelCentre } = skeleton;
  const otherView: View = {
    ...view,
    direction: view.direction === 1 ? -1 : 1,
    at: (point) => view.at(mirrored(point)),
    turned: (direction) => view.turned(mirrored(direction)),
  };
  const railTop = skeleton.stopTop.y + 110;
  return (
    <g>
      <WheelAndBody view={view} skeleton={skeleton} tone={wheelTone} />
      <WheelAndBody view={otherView} skeleton={skeleton} />
      <Line
        view={view}
        points={[
          { x: -skeleton.stopTop.x - 90, y: railTop },
          { x: skeleton.stopTop.x + 90, y: railTop },
        ]}
      />
      {detail && <ContextSpring view={view} skeleton={skeleton} />}
      {detail && <ContextSpring view={otherView} skeleton={skeleton} />}
      <Bar
        view={view}
        tone="part"
        points={[add(mirrored(wheelCentre), { x: 100, y: 0 }), add(wheelCentre, { x: -100, y: 0 })]}
        width={2 * axleTubeRadius}
      />
      <Disc view={view} tone="part" centre={{ x: 0, y: 0 }} radius={135} />
      <AxleSide {...props} tone="context" view={otherView} />
      <AxleSide {...props} tone="part" />
    </g>
  );
}

function AxleSide({ view, skeleton, freeHeight, tone }: SceneProps & { readonly tone: Tone }) {
  const { pad, stopFace, stopTop, axis } = skeleton;
  return (
    <g>
      <Box
        view={view}
        low={{ x: stopTop.x - 48, y: stopTop.y + 6 }}
        high={{ x: stopTop.x + 48, y: stopTop.y + 110 }}
        round={8}
      />
      <Body
        view={view}
        tone={tone}
        from={{ x: pad.x, y: axleTubeRadius - 2 }}
        to={pad}
        axis={{ x: 0, y: 1 }}
        half={40}
      />
      <Plate view={view} tone={tone} middle={add(stopTop, axis, 4)} axis={axis} half={42} />
      {skeleton.stop !== "missing" && (
        <StopShape
          view={view}
          top={stopTop}
          axis={axis}
          height={distance(stopFace, stopTop)}
          freeHeight={freeHeight}
        />
      )}
    </g>
  );
}

const readings: LayoutOnScreen<"axle">["readings"] = {
  track: {
    words: () => ({
      name: messages.track,
      how: messages.fromMiddleOfLeft,
      wrong: messages.measuredOutsideToOutside,
      a: messages.middleLeftTire,
      b: messages.middleRightTire,
    }),
    view: {
      from: "along",
      around: "axle",
      measure: ({ skeleton, side }) => ({
        ...acrossFromLeft({ x: skeleton.wheelCentre.x, y: -tyreRadius }, side, down),
        offset: 20,
      }),
    },
  },
  stopSpacing: {
    words: () => ({
      name: messages.spacingOfStops,
      how: messages.fromMiddleOfLeftStop,
      wrong: messages.frameRailToFrame,
      a: messages.middleLeftStop,
      b: messages.middleRightStop,
    }),
    view: {
      from: "along",
      around: "axle",
      measure: ({ skeleton, side }) => ({
        ...acrossFromLeft(skeleton.stopFace, side, down),
        offset: 44,
      }),
    },
  },
};

export const axle: LayoutOnScreen<"axle"> = {
  readings,
  words: {
    choice: {
      name: messages.onBeamAxle,
      hint: messages.oneAxleJoinsBoth,
    },
    title: messages.stopOverBeamAxle,
    description: messages.oneAxleJoinsBothWheels,
    short: messages.beamAxle,
    landing: messages.padOnAxle,
    plusLean: messages.topTowardMiddle,
    lean: ({ armRole }) => ({
      ...leanOfStop(armRole),
      note: messages.eitherWayCountsSame,
    }),
    movingMetal: messages.topOfAxle,
    placeOnArm: null,
    closer: null,
  },
  picture: {
    usualLean: 0,
    leanPair: "stopLean",
    values: { track: 1500, stopSpacing: 780, gap: 70, freeHeight: 160, rideHeight: 500 },
    bounds: () => null,
  },
  points({ numbers, axis, stand: { stop, gap, height } }) {
    const middle = { x: 0, y: 0 };
    const wheelCentre = { x: numbers.track / 2, y: 0 };
    const pad = { x: numbers.stopSpacing / 2, y: axleTubeRadius + 12 };
    const stopFace = add(pad, axis, gap);
    const stopTop = add(stopFace, axis, height);
    const damperFoot = { x: Math.max(numbers.stopSpacing / 2 - 150, 60), y: axleTubeRadius };
    return {
      pivot: middle,
      outer: wheelCentre,
      bend: middle,
      foot: pad,
      pad,
      stopFace,
      stopTop,
      head: stopTop,
      stopHeight: height,
      stop,
      stopOnArm: false,
      wheelCentre,
      damperFoot,
      damperHead: add(damperFoot, { x: -60, y: 330 }),
    };
  },
  Scene: AxleScene,
};

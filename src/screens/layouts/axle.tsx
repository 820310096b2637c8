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
      name: "Track",
      how: "From the middle of the left tire's tread (A) to the middle of the right one (B), on the ground.",
      wrong: "Measured outside to outside it is one tire's width too much.",
      a: "middle, left tire",
      b: "middle, right tire",
    }),
    measure: ({ skeleton, side }) => ({
      ...acrossFromLeft({ x: skeleton.wheelCentre.x, y: -tyreRadius }, side, down),
      offset: 20,
    }),
  },
  stopSpacing: {
    words: () => ({
      name: "Spacing of the stops",
      how: "From the middle of the left stop (A) to the middle of the right one (B), straight across.",
      wrong: "Frame rail to frame rail is not the same. Measure where the rubber meets its pad.",
      a: "middle, left stop",
      b: "middle, right stop",
    }),
    measure: ({ skeleton, side }) => ({
      ...acrossFromLeft(skeleton.stopFace, side, down),
      offset: 44,
    }),
  },
};

export const axle: LayoutOnScreen<"axle"> = {
  readings,
  words: {
    choice: {
      name: "On a beam axle",
      hint: "One axle joins both wheels; the stops sit between axle and frame.",
    },
    title: "Stop over a beam axle",
    description: "One axle joins both wheels; a stop hangs from the frame over each end.",
    short: "Beam axle",
    landing: "pad on the axle",
    plusLean: "top toward the middle = +",
    lean: ({ armRole }) => ({
      ...leanOfStop(armRole),
      note: "Either way counts the same. Upright: 0.",
    }),
    movingMetal: "top of the axle",
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

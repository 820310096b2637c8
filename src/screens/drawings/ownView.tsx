import type { JSX } from "preact";
import type { Side } from "../../physics/fitment.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/screens/drawings.ts";
import { linkageFromFront } from "../layouts/linkageFromFront.ts";
import type { ReadingView } from "../layouts/toldReading.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";
import { type Frame, type Point, tyreRadius, tyreWidth, type View } from "../shapes/geometry.ts";
import type { Measurement } from "../shapes/measurement.ts";
import { ArmAboveScene } from "./above/ArmAboveScene.tsx";
import { aboveMeasurement, armOfValues } from "./above/aboveMeasurement.ts";
import { aboveBounds } from "./above/armFromAbove.ts";
import type { DrawingValues, DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";
import { LinkageScene } from "./linkage/LinkageScene.tsx";
import { viewOf } from "./viewOf.ts";

/** A view of its own, other than the layout seen along the vehicle. */
export interface OwnView {
  readonly measurement: Measurement;
  readonly direction: 1 | -1;
  /** Corners of what must be seen, mm. */
  readonly focus: readonly Point[];
  readonly frame: Frame;
  readonly caption: string;
  readonly scene: (view: View) => JSX.Element;
}

interface Seen {
  readonly values: DrawingValues;
  readonly numbers: DrawnNumbers;
  readonly side: Side;
  readonly axle: "front" | "rear";
  readonly layout: WordedLayout;
}

/** Lengths of an arm are seen from above, the other arm and the knuckle from the front; null: neither. */
export function ownViewOf(reading: PicturedReading, seen: Seen): OwnView | null {
  const view = viewOf(reading);
  if (view?.from === "above") return fromAbove(view, reading === "limitDistance", seen);
  return view?.from === "front" ? fromFront(view, seen) : null;
}

const nameOf: { readonly [Each in Side]: string } = { left: messages.left, right: messages.right };

type From<Place extends ReadingView["from"]> = Extract<ReadingView, { readonly from: Place }>;

function fromAbove(length: From<"above">, onArm: boolean, { values, side, layout }: Seen): OwnView {
  const { onRod } = layoutRegistry[layout.kind];
  const trailing = layout.armRole === "carriesWheel";
  const arm = armOfValues(values, onArm, trailing);
  const { start, end } = length;
  const point = end === "rearBolt" ? null : end;
  return {
    measurement: aboveMeasurement(length, arm),
    direction: side === "left" ? -1 : 1,
    focus: aboveBounds(arm, point),
    frame: { left: 30, top: 34, right: 310, bottom: 208 },
    caption: messages.fromAboveFrontOf({ side: nameOf[side] }),
    scene: (view) => (
      <ArmAboveScene
        view={view}
        arm={arm}
        to={point}
        squareTo={start === "pivotLine"}
        withMount={onRod && !onArm}
      />
    ),
  };
}

function fromFront(
  { measure, ground }: From<"front">,
  { numbers, side, axle, layout }: Seen,
): OwnView {
  const linkage = linkageFromFront(numbers, !layoutRegistry[layout.kind].onArm, layout.armRole);
  const { lowerPivot, upper, top, wheelCentre, groundY } = linkage;
  const inner = Math.min(lowerPivot.x, upper?.pivot.x ?? 0) - 60;
  const low = ground ? groundY - 20 : Math.min(lowerPivot.y, linkage.lowerJoint.y) - 70;
  const high = Math.max(top?.y ?? 0, upper?.joint.y ?? 0, upper?.pivot.y ?? 0) + 60;
  return {
    measurement: measure(linkage, numbers),
    direction: (side === "left") === (axle === "front") ? 1 : -1,
    focus: [
      { x: inner, y: low },
      { x: wheelCentre.x + tyreWidth / 2 + 10, y: Math.min(high, wheelCentre.y + tyreRadius) },
      ...(top === null ? [] : [top]),
    ],
    frame: { left: 30, top: 40, right: 310, bottom: 204 },
    caption: messages.fromFront2({ side: nameOf[side], axle }),
    scene: (view) => <LinkageScene view={view} linkage={linkage} strutLean={numbers.stopLean} />,
  };
}

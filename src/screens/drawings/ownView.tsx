import type { JSX } from "preact";
import type { Side } from "../../physics/fitment.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/screens/drawings.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";
import { type Frame, type Point, tyreRadius, tyreWidth, type View } from "../shapes/geometry.ts";
import type { Measurement } from "../shapes/measurement.ts";
import { ArmAboveScene } from "./above/ArmAboveScene.tsx";
import {
  type AboveReading,
  aboveMeasurement,
  armLength,
  armOfValues,
  isFromAbove,
} from "./above/aboveMeasurement.ts";
import { aboveBounds } from "./above/armFromAbove.ts";
import type { DrawingValues, DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";
import { LinkageScene } from "./linkage/LinkageScene.tsx";
import {
  isLinkageReading,
  type LinkageReading,
  linkageFromFront,
} from "./linkage/linkageFromFront.ts";
import { linkageMeasurement } from "./linkage/linkageMeasurement.ts";

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
  if (isFromAbove(reading)) return fromAbove(reading, seen);
  return isLinkageReading(reading) ? fromFront(reading, seen) : null;
}

const nameOf: { readonly [Each in Side]: string } = { left: messages.left, right: messages.right };

function fromAbove(reading: AboveReading, { values, side, layout }: Seen): OwnView {
  const { onRod } = layoutRegistry[layout.kind];
  const trailing = layout.armRole === "carriesWheel";
  const arm = armOfValues(reading, values, trailing);
  const { from, to } = armLength(reading);
  const point = to === "rearBolt" ? null : to;
  return {
    measurement: aboveMeasurement(reading, arm),
    direction: side === "left" ? -1 : 1,
    focus: aboveBounds(arm, point),
    frame: { left: 30, top: 34, right: 310, bottom: 208 },
    caption: messages.fromAboveFrontOf({ side: nameOf[side] }),
    scene: (view) => (
      <ArmAboveScene
        view={view}
        arm={arm}
        to={point}
        squareTo={from === "pivotLine"}
        withMount={onRod && reading !== "limitDistance"}
      />
    ),
  };
}

function fromFront(reading: LinkageReading, { numbers, side, axle, layout }: Seen): OwnView {
  const linkage = linkageFromFront(numbers, !layoutRegistry[layout.kind].onArm, layout.armRole);
  const { lowerPivot, upper, top, wheelCentre, groundY } = linkage;
  const overGround = reading === "otherPivotHeight" || reading === "otherOuterHeight";
  const inner = Math.min(lowerPivot.x, upper?.pivot.x ?? 0) - 60;
  const low = overGround ? groundY - 20 : Math.min(lowerPivot.y, linkage.lowerJoint.y) - 70;
  const high = Math.max(top?.y ?? 0, upper?.joint.y ?? 0, upper?.pivot.y ?? 0) + 60;
  return {
    measurement: linkageMeasurement(reading, numbers, linkage),
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

import { useId } from "preact/hooks";
import type { LayoutKind, Side } from "../../physics/fitment.ts";
import {
  geometryRegistry,
  isGeometryReadingName,
  type LimitPlace,
  layoutRegistry,
} from "../../physics/readings/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/drawings.ts";
import type { Surroundings } from "../layouts/pictured.ts";
import type { WordedLayout } from "../layouts/wordedReading.ts";
import { plusWords } from "../readings/readingWords.ts";
import { Detail, type DetailName, detailBounds, detailOf } from "./details.tsx";
import "./drawings.css";
import type { Skeleton } from "../layouts/skeleton.ts";
import {
  add,
  type Frame,
  fitViewAndMarks,
  type Point,
  tyreRadius,
  tyreWidth,
} from "../shapes/geometry.ts";
import type { Measurement } from "../shapes/measurement.ts";
import { Plate } from "../shapes/parts.tsx";
import { type DrawingValues, drawnNumbers, isKnown, type PicturedReading } from "./drawnNumbers.ts";
import { freeCorner, Inset, insetSize } from "./Inset.tsx";
import { sceneBounds } from "./LayoutPicture.tsx";
import { Measure, marksOf } from "./Measure.tsx";
import { measurementOf } from "./measurement.ts";
import { ownViewOf } from "./ownView.tsx";
import { picturedWords } from "./picturedWords.ts";
import { Scene } from "./Scene.tsx";
import { skeletonOf } from "./skeletonOf.ts";
import { viewOf } from "./viewOf.ts";

const width = 340;
const height = 244;
const sceneTop = 24;
const sceneBottom = 216;
const whole: Frame = { left: 0, top: sceneTop, right: width, bottom: sceneBottom };

export interface ReadingDrawingProps {
  readonly layoutKind: LayoutKind;
  readonly reading: PicturedReading;
  readonly values: DrawingValues;
  readonly side: Side;
  readonly unit: LengthUnit;
  /** Seen from the front at the front axle (the usual case), from behind at the rear. */
  readonly axle?: "front" | "rear" | undefined;
  /** Where a limit is measured: at the wheel (the usual case) or as closing of the stop. */
  readonly at?: LimitPlace | undefined;
  readonly armRole?: WordedLayout["armRole"];
  readonly stopOn?: WordedLayout["stopOn"];
  /** Stands for the current number where it was typed otherwise: "2 5/16 in". */
  readonly text?: string | undefined;
}

/** One reading, drawn to the current numbers: where A and B are, and what is between them. */
export function ReadingDrawing({
  layoutKind,
  reading,
  values,
  side,
  unit,
  axle = "front",
  at = "wheel",
  armRole,
  stopOn,
  text,
}: ReadingDrawingProps) {
  const id = useId();
  const layout = { kind: layoutKind, armRole, stopOn };
  const numbers = drawnNumbers(layoutKind, reading, values);
  const view = viewOf(reading);
  const around = view?.from === "along" ? view.around : null;
  const fromSide = armRole === "carriesWheel" && isSeenFromSide(reading, around);
  const skeleton = skeletonOf(layoutKind, reading, numbers, stopOn, fromSide);
  const atStop = at === "stop" && reading.startsWith("limit:");
  const detail = atStop ? null : detailOf(reading);
  const own = ownViewOf(reading, { values, numbers, side, axle, layout });
  const measurement =
    own?.measurement ?? measurementOf(reading, numbers, skeleton, side, atStop ? "stop" : "wheel");
  const direction =
    own?.direction ?? (fromSide ? rearwardDirection(side) : outboardDirection(detail, side, axle));
  const close = own === null && isClose(layoutKind, reading, around, detail, atStop);
  const words = picturedWords(reading, layout, at);
  const plus =
    measurement.kind === "angle" &&
    plusWords(measurement.reference === 90 ? "lean" : "line", layout);
  const number = text ?? numberText(reading, values[reading], unit);
  const fitted = fitViewAndMarks(
    own?.focus ??
      (detail === null
        ? focus(reading, around, skeleton, measurement, atStop)
        : detailBounds(detail, reading, numbers)),
    own?.frame ?? frameFor(reading, around, close, detail, direction),
    direction,
    (tried) => marksOf(measurement, number, tried),
    whole,
  );
  const description = [
    words.how,
    words.a && `A: ${words.a}. B: ${words.b}.`,
    plus && `${plus}.`,
    isKnown(values[reading]) ? messages.now({ number }) : messages.notYetMeasured,
  ];
  return (
    <svg
      class="drawing reading-drawing"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
      data-px-per-mm={fitted.scale}
    >
      <title id={`${id}-title`}>{messages.side({ name: words.name, side })}</title>
      <desc id={`${id}-desc`}>{description.filter(Boolean).join(" ")}</desc>
      <svg
        y={sceneTop}
        width={width}
        height={sceneBottom - sceneTop}
        viewBox={`0 ${sceneTop} ${width} ${sceneBottom - sceneTop}`}
        aria-hidden="true"
      >
        {own !== null ? (
          own.scene(fitted)
        ) : detail === null ? (
          <Scene
            view={fitted}
            skeleton={skeleton}
            freeHeight={numbers.freeHeight}
            wheelTone={reading === "limit:tyre" && !atStop ? "part" : "context"}
          />
        ) : (
          <Detail
            view={fitted}
            detail={detail}
            reading={reading}
            kind={layoutKind}
            numbers={numbers}
          />
        )}
        {atStop && measurement.kind === "length" && (
          <Plate
            view={fitted}
            tone="context"
            middle={measurement.b}
            axis={skeleton.axis}
            half={34}
          />
        )}
      </svg>
      {close && (
        <Inset
          corner={freeCorner(
            skeleton,
            fitted,
            direction,
            marksOf(measurement, number, fitted),
            whole,
          )}
          skeleton={skeleton}
          freeHeight={numbers.freeHeight}
          direction={direction}
          atDamper={detail === "rod" || detail === "spring"}
        />
      )}
      <Measure view={fitted} measurement={measurement} text={number} frame={whole} />
      <text class="caption" x={8} y={17}>
        {own?.caption ?? (fromSide ? sideCaption(side) : captionText(reading, detail, side, axle))}
      </text>
      {plus && (
        <text class="caption strong" x={width - 8} y={17} text-anchor="end">
          {plus}
        </text>
      )}
      {words.a !== "" && <Legend a={words.a} b={words.b} />}
    </svg>
  );
}

function outboardDirection(detail: DetailName | null, side: Side, axle: "front" | "rear"): 1 | -1 {
  const fromFront = axle === "front" || detail === "wheel";
  return (side === "left") === fromFront ? 1 : -1;
}

/** What is read off a trailing arm as it stands along the vehicle. */
function isSeenFromSide(reading: PicturedReading, around: Surroundings | null): boolean {
  return isOfStand(reading) || (around !== null && around !== "axle");
}

function isOfStand(reading: PicturedReading): boolean {
  return reading === "gap" || reading === "pressedHeight" || reading === "seatToPad";
}

/** Of the left side the front of the vehicle is at the left, seen from beside it. */
function rearwardDirection(side: Side): 1 | -1 {
  return side === "left" ? 1 : -1;
}

function sideCaption(side: Side): string {
  return side === "left" ? messages.leftSideFront : messages.rightSideFront;
}

/** The part of the picture that what matters is fitted into; the rest is for marks and the inset. */
function frameFor(
  reading: PicturedReading,
  around: Surroundings | null,
  close: boolean,
  detail: DetailName | null,
  direction: 1 | -1,
): Frame {
  const along = around === "arm";
  const inboard = close ? insetSize.width + 10 : along ? 34 : 26;
  const outboard = detail === "spring" ? 104 : close ? 118 : along ? 6 : 26;
  return {
    left: direction === 1 ? inboard : outboard,
    top: sceneTop + (along ? 8 : around === "lean" ? 34 : 18),
    right: width - (direction === 1 ? outboard : inboard),
    bottom: sceneBottom - (reading === "track" ? 44 : along ? 8 : 16),
  };
}

function captionText(
  reading: PicturedReading,
  detail: DetailName | null,
  side: Side,
  axle: "front" | "rear",
): string {
  if (detail === "stopFree" || detail === "stopPressed") return messages.stopByItself;
  const name = side === "left" ? messages.left : messages.right;
  if (detail === "wheel") return messages.fromSide({ name });
  if (reading === "track" || reading === "stopSpacing") return messages.wholeFromFront({ axle });
  return messages.fromFront({ name, axle });
}

function numberText(reading: PicturedReading, value: number | undefined, unit: LengthUnit): string {
  const kind = reading === "cornerMass" ? "mass" : isAngle(reading) ? "angle" : "length";
  if (isKnown(value) && Math.abs(value) < 1e6) return quantityText({ kind, value }, unit);
  if (kind === "angle") return "?°";
  if (kind === "mass") return unit === "in" ? "? lb" : "? kg";
  return `? ${unit}`;
}

function isAngle(reading: PicturedReading): boolean {
  return isGeometryReadingName(reading) && geometryRegistry[reading].sort === "angle";
}

/** Shown so near that a small picture of the whole is needed to tell where it is. */
function isClose(
  kind: LayoutKind,
  reading: PicturedReading,
  around: Surroundings | null,
  detail: DetailName | null,
  atStop: boolean,
): boolean {
  if (detail === "rod" || detail === "spring") return true;
  return atStop || isOfStand(reading) || (around === "lean" && !layoutRegistry[kind].onRod);
}

/** Opposite corners of what the picture must show of the layout, mm. */
function focus(
  reading: PicturedReading,
  around: Surroundings | null,
  skeleton: Skeleton,
  measurement: Measurement,
  atStop: boolean,
): Point[] {
  const { kind, pad, foot, head, axis, stopTop, wheelCentre, wheelRadius, archY } = skeleton;
  const { onRod, joinsWheels } = layoutRegistry[kind];
  const widened = (points: readonly Point[], x: number, below: number, above: number) =>
    points.flatMap((point) => [add(point, { x: -x, y: -below }), add(point, { x, y: above })]);
  const out = wheelCentre.x + (skeleton.fromSide ? 0.6 * wheelRadius : tyreWidth / 2 + 20);
  if (around === "ground") {
    return [
      { x: -60, y: wheelCentre.y - wheelRadius - 14 },
      { x: out, y: Math.max(60, pad.y + 90) },
    ];
  }
  if (isOfStand(reading) || atStop) {
    const end = measurement.kind === "length" ? [measurement.a, measurement.b] : [];
    return widened([pad, stopTop, ...end], 40, 46, 30);
  }
  if (reading === "limit:tyre") {
    return [
      { x: wheelCentre.x - 190, y: wheelCentre.y + tyreRadius - 170 },
      { x: wheelCentre.x + 190, y: archY + 60 },
    ];
  }
  if (around === "lean") {
    const tip = measurement.kind === "angle" ? measurement.reach : 0;
    const ends = [foot, add(foot, axis, tip), add(foot, { x: 0, y: 1 }, tip)];
    return !onRod
      ? widened(ends, 44, 52, 40)
      : [...widened(ends, 60, 60, 60), { x: -40, y: foot.y }, { x: out, y: foot.y }];
  }
  if (around === "rod") {
    return [...widened([foot, head], 60, 70, 50), { x: -60, y: 0 }, { x: out, y: 0 }];
  }
  if (joinsWheels) return sceneBounds(skeleton);
  return [
    { x: -60, y: wheelCentre.y - wheelRadius - 14 },
    { x: out, y: Math.max(onRod ? 0 : stopTop.y + 20, 110) },
  ];
}

/** How wide a letter is at most, px: a plain one, any other. */
const letterWidths = [6.4, 7.5] as const;
/** What a legend's words have room for in half of the picture, px. */
const halfLegend = 142;

function widthOf(words: string): number {
  const plain = words.match(/[ -~]/g)?.length ?? 0;
  return letterWidths[0] * plain + letterWidths[1] * (words.length - plain);
}

function Legend({ a, b }: { readonly a: string; readonly b: string }) {
  const y = height - 10;
  const stacked = Math.max(widthOf(a), widthOf(b)) > halfLegend;
  return (
    <g class="legend">
      <text x={8} y={stacked ? y - 15 : y}>
        <tspan class="letter">{messages.a}</tspan> {a}
      </text>
      <text x={stacked ? 8 : width / 2 + 6} y={y}>
        <tspan class="letter">{messages.b}</tspan> {b}
      </text>
    </g>
  );
}

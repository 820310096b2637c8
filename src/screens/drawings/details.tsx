import type { LayoutKind } from "../../physics/fitment.ts";
import { layoutRegistry } from "../../physics/readings/index.ts";
import { add, arcPoints, type Point, tyreRadius, type View } from "../shapes/geometry.ts";
import {
  Bar,
  Body,
  Box,
  Coil,
  Disc,
  Ground,
  Line,
  Plate,
  StopShape,
  stopHalfWidth,
  WheelFromSide,
} from "../shapes/parts.tsx";
import type { DrawnNumbers, PicturedReading } from "./drawnNumbers.ts";
import { springPlace, springSolid } from "./measurement.ts";

/** Readings that are clearer in a picture of their own than in that of the layout. */
export type DetailName =
  | "wheel"
  | "rod"
  | "spring"
  | "metal"
  | "other"
  | "stopFree"
  | "stopPressed";

export function detailOf(reading: PicturedReading): DetailName | null {
  switch (reading) {
    case "rideHeight":
    case "cornerMass":
      return "wheel";
    case "limit:damper":
      return "rod";
    case "limit:spring":
      return "spring";
    case "limit:metal":
      return "metal";
    case "limit:other":
      return "other";
    case "freeHeight":
      return "stopFree";
    case "usableCompression":
      return "stopPressed";
    default:
      return null;
  }
}

const up: Point = { x: 0, y: 1 };
const archRadius = 435;

/** Opposite corners of what the picture must show, mm. */
export function detailBounds(
  detail: DetailName,
  reading: PicturedReading,
  numbers: DrawnNumbers,
): Point[] {
  const { freeHeight } = numbers;
  switch (detail) {
    case "wheel":
      return [
        { x: -560, y: -tyreRadius - (reading === "cornerMass" ? 110 : 20) },
        { x: 560, y: Math.max(numbers.rideHeight, 330) + 130 },
      ];
    case "rod":
      return [
        { x: -70, y: -90 },
        { x: 70, y: numbers["limit:damper"] + 80 },
      ];
    case "spring":
      return [
        { x: -springPlace - 60, y: -24 },
        { x: springPlace + 50, y: springSolid + Math.max(numbers["limit:spring"], 20) + 40 },
      ];
    case "metal":
    case "other":
      return [
        { x: -150, y: -90 },
        {
          x: 150,
          y: Math.max(numbers[detail === "metal" ? "limit:metal" : "limit:other"], 10) + 90,
        },
      ];
    case "stopFree":
      return [
        { x: -0.8 * freeHeight, y: -0.14 * freeHeight },
        { x: 1.25 * freeHeight, y: 1.12 * freeHeight },
      ];
    default:
      return [
        { x: -1.25 * freeHeight, y: -0.14 * freeHeight },
        { x: 1.85 * freeHeight, y: 1.12 * freeHeight },
      ];
  }
}

interface DetailProps {
  readonly view: View;
  readonly detail: DetailName;
  readonly reading: PicturedReading;
  readonly kind: LayoutKind;
  readonly numbers: DrawnNumbers;
}

export function Detail({ view, detail, reading, kind, numbers }: DetailProps) {
  switch (detail) {
    case "wheel":
      return <WheelAndArch view={view} numbers={numbers} onScale={reading === "cornerMass"} />;
    case "rod":
      return <Rod view={view} numbers={numbers} kind={kind} />;
    case "spring":
      return <Springs view={view} numbers={numbers} />;
    case "metal":
      return <MetalAbove view={view} clearance={numbers["limit:metal"]} kind={kind} />;
    case "other":
      return <OtherAbove view={view} clearance={numbers["limit:other"]} />;
    case "stopFree":
      return <StopOnBench view={view} freeHeight={numbers.freeHeight} />;
    default:
      return <StopsSideBySide view={view} numbers={numbers} />;
  }
}

interface NumbersProps {
  readonly view: View;
  readonly numbers: DrawnNumbers;
}

function WheelAndArch({ view, numbers, onScale }: NumbersProps & { readonly onScale: boolean }) {
  const height = onScale ? 500 : numbers.rideHeight;
  const rise = height + 70;
  const arch = arcPoints({ x: 0, y: 0 }, 1, 0, 180).map(({ x, y }) => ({
    x: archRadius * x,
    y: -70 + rise * y,
  }));
  return (
    <g>
      <Ground view={view} from={-700} to={700} y={-tyreRadius - (onScale ? 60 : 0)} />
      <Line
        view={view}
        points={[
          { x: 690, y: height + 110 },
          { x: 640, y: 60 },
          { x: 560, y: -80 },
          ...arch,
          { x: -540, y: -110 },
          { x: -690, y: -110 },
        ]}
      />
      <WheelFromSide view={view} centre={{ x: 0, y: 0 }} />
      <Line view={view} tone="part" points={arch} />
      {onScale && (
        <Box
          view={view}
          tone="part"
          low={{ x: -330, y: -tyreRadius - 60 }}
          high={{ x: 330, y: -tyreRadius }}
          round={14}
        />
      )}
    </g>
  );
}

function Rod({ view, numbers, kind }: NumbersProps & { readonly kind: LayoutKind }) {
  const travel = numbers["limit:damper"];
  const mount = { x: 0, y: travel };
  const stopHere = layoutRegistry[kind].onRod;
  return (
    <g>
      <Body view={view} from={{ x: 0, y: -400 }} to={{ x: 0, y: -8 }} axis={up} half={30} />
      <Box view={view} tone="part" low={{ x: -34, y: -16 }} high={{ x: 34, y: 0 }} round={4} />
      <Bar view={view} tone="part" points={[{ x: 0, y: 6 }, mount]} width={18} />
      {stopHere && travel > 1 && (
        <StopShape
          view={view}
          top={mount}
          axis={up}
          height={Math.min(numbers.freeHeight, 0.62 * travel)}
          freeHeight={Math.min(numbers.freeHeight, 0.62 * travel)}
          ghost
        />
      )}
      <Plate view={view} middle={add(mount, up, 3)} axis={up} half={62} />
      <Bar view={view} tone="part" points={[add(mount, up, 10), add(mount, up, 50)]} width={30} />
      <Line
        view={view}
        points={[
          { x: -100, y: travel + 66 },
          { x: 100, y: travel + 66 },
        ]}
      />
    </g>
  );
}

const springCoils = 6;
const springRadius = 42;
const wire = springSolid / (springCoils + 1);

function Springs({ view, numbers }: NumbersProps) {
  const now = springSolid + numbers["limit:spring"];
  return (
    <g>
      {[-springPlace, springPlace].map((x) => (
        <g key={x}>
          <Line
            view={view}
            points={[
              { x: x - 58, y: -3 },
              { x: x + 58, y: -3 },
            ]}
          />
          <Coil
            view={view}
            tone={x < 0 ? "part" : "context"}
            foot={{ x, y: 0 }}
            head={{ x, y: x < 0 ? now : springSolid }}
            radius={springRadius}
            coils={springCoils}
            wire={wire}
          />
        </g>
      ))}
      <Line
        view={view}
        dashed
        points={[
          { x: -springPlace + 48, y: now },
          { x: springPlace, y: now },
        ]}
      />
    </g>
  );
}

function MovesUp({ view, x, y }: { readonly view: View; readonly x: number; readonly y: number }) {
  return (
    <Line
      view={view}
      points={[
        { x, y: y - 42 },
        { x, y },
        { x: x - 9, y: y - 13 },
        { x, y },
        { x: x + 9, y: y - 13 },
      ]}
    />
  );
}

function MetalAbove({
  view,
  clearance,
  kind,
}: {
  readonly view: View;
  readonly clearance: number;
  readonly kind: LayoutKind;
}) {
  const axle = layoutRegistry[kind].joinsWheels;
  return (
    <g>
      <Box
        view={view}
        tone="part"
        low={{ x: -110, y: clearance }}
        high={{ x: 110, y: clearance + 70 }}
        round={6}
      />
      <Bar
        view={view}
        tone="part"
        width={axle ? 64 : 40}
        points={
          axle
            ? [
                { x: -600, y: -32 },
                { x: 600, y: -32 },
              ]
            : [
                { x: -600, y: -10 },
                { x: 0, y: -20 },
                { x: 600, y: -70 },
              ]
        }
      />
      <MovesUp view={view} x={-128} y={Math.min(clearance, 60) + 6} />
    </g>
  );
}

function OtherAbove({ view, clearance }: { readonly view: View; readonly clearance: number }) {
  return (
    <g>
      <Line
        view={view}
        tone="part"
        closed
        points={[
          { x: -110, y: clearance + 72 },
          { x: -110, y: clearance + 46 },
          { x: -42, y: clearance + 40 },
          { x: -36, y: clearance },
          { x: 36, y: clearance },
          { x: 42, y: clearance + 40 },
          { x: 110, y: clearance + 46 },
          { x: 110, y: clearance + 72 },
        ]}
      />
      <Bar
        view={view}
        tone="part"
        width={24}
        points={[
          { x: 0, y: -30 },
          { x: -600, y: -60 },
        ]}
      />
      <Disc view={view} tone="part" centre={{ x: 0, y: -34 }} radius={34} />
      <Disc view={view} tone="part" centre={{ x: 0, y: -34 }} radius={12} />
      <MovesUp view={view} x={-128} y={Math.min(clearance, 60) + 6} />
    </g>
  );
}

function StopOnBench({
  view,
  freeHeight,
  x = 0,
  height = freeHeight,
}: {
  readonly view: View;
  readonly freeHeight: number;
  readonly x?: number;
  readonly height?: number;
}) {
  const half = stopHalfWidth(freeHeight) * 1.25;
  return (
    <g>
      <Box
        view={view}
        tone="part"
        low={{ x: x - half, y: -0.07 * freeHeight }}
        high={{ x: x + half, y: 0 }}
        round={0.02 * freeHeight}
      />
      <StopShape
        view={view}
        top={{ x, y: 0 }}
        axis={{ x: 0, y: -1 }}
        height={height}
        freeHeight={freeHeight}
      />
    </g>
  );
}

function StopsSideBySide({ view, numbers }: NumbersProps) {
  const { freeHeight, usableCompression } = numbers;
  const pressed = freeHeight - usableCompression;
  const place = 0.7 * freeHeight;
  const half = 0.48 * freeHeight;
  return (
    <g>
      <StopOnBench view={view} freeHeight={freeHeight} x={-place} />
      <StopOnBench view={view} freeHeight={freeHeight} x={place} height={pressed} />
      <Line
        view={view}
        dashed
        points={[
          { x: -place, y: freeHeight },
          { x: place, y: freeHeight },
        ]}
      />
      <Plate view={view} middle={{ x: place, y: pressed }} axis={up} half={half} />
      <Line
        view={view}
        points={[
          { x: place, y: 1.1 * freeHeight },
          { x: place, y: pressed },
          { x: place - 0.06 * freeHeight, y: pressed + 0.1 * freeHeight },
          { x: place, y: pressed },
          { x: place + 0.06 * freeHeight, y: pressed + 0.1 * freeHeight },
        ]}
      />
    </g>
  );
}

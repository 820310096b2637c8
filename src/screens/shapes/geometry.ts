/** A point or direction. In a scene: mm, x outboard, y up. On the picture: px, x right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle on the picture, px. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** How a scene lies on the picture. */
export interface View {
  /** px per mm, above 0. */
  readonly scale: number;
  /** 1: outboard is to the right of the picture; -1: to the left. */
  readonly direction: 1 | -1;
  at(point: Point): Point;
  /** A direction of the scene as one on the picture, same length. */
  turned(direction: Point): Point;
}

export function add(point: Point, direction: Point, distance = 1): Point {
  return { x: point.x + direction.x * distance, y: point.y + direction.y * distance };
}

export function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** A quarter turn counterclockwise where y is up, clockwise where y is down. */
export function quarterTurn(direction: Point): Point {
  return { x: -direction.y, y: direction.x };
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** The direction of a line `degrees` below the horizontal, outboard. */
export function belowHorizontal(degrees: number): Point {
  return { x: Math.cos(radians(degrees)), y: -Math.sin(radians(degrees)) };
}

/** The direction of an axis that leans `degrees` from the vertical, its top inboard. */
export function leaning(degrees: number): Point {
  return { x: -Math.sin(radians(degrees)), y: Math.cos(radians(degrees)) };
}

/**
 * The view that shows all `points` of a scene as large as `frame` allows, centred, no larger than
 * `mostScale` px per mm. Points that all coincide are shown at that scale.
 */
export function fitView(
  points: readonly Point[],
  frame: Frame,
  direction: 1 | -1,
  mostScale = 4,
): View {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(
    mostScale,
    (frame.right - frame.left) / Math.max(right - left, 1e-6),
    (frame.bottom - frame.top) / Math.max(top - bottom, 1e-6),
  );
  const centre = { x: (left + right) / 2, y: (bottom + top) / 2 };
  const middle = { x: (frame.left + frame.right) / 2, y: (frame.top + frame.bottom) / 2 };
  return {
    scale,
    direction,
    at: (point) => ({
      x: middle.x + direction * scale * (point.x - centre.x),
      y: middle.y - scale * (point.y - centre.y),
    }),
    turned: ({ x, y }) => ({ x: direction * x, y: -y }),
  };
}

/**
 * Like fitView, but gives up room inside `frame` wherever the `marks` of a view (px points that do not
 * grow with the scale) would fall outside `room`.
 */
export function fitViewAndMarks(
  points: readonly Point[],
  frame: Frame,
  direction: 1 | -1,
  marks: (view: View) => readonly Point[],
  room: Frame,
): View {
  let inner = frame;
  let view = fitView(points, inner, direction);
  for (let round = 0; round < 6; round++) {
    const placed = marks(view);
    const over = {
      left: Math.max(0, ...placed.map(({ x }) => room.left - x)),
      right: Math.max(0, ...placed.map(({ x }) => x - room.right)),
      top: Math.max(0, ...placed.map(({ y }) => room.top - y)),
      bottom: Math.max(0, ...placed.map(({ y }) => y - room.bottom)),
    };
    if (Math.max(over.left, over.right, over.top, over.bottom) < 0.5) break;
    const narrowed = (low: number, high: number, least: number) =>
      high - low < least ? [(low + high - least) / 2, (low + high + least) / 2] : [low, high];
    const [left = 0, right = 0] = narrowed(inner.left + over.left, inner.right - over.right, 60);
    const [top = 0, bottom = 0] = narrowed(inner.top + over.top, inner.bottom - over.bottom, 40);
    inner = { left, top, right, bottom };
    view = fitView(points, inner, direction);
  }
  return view;
}

/** Points from direction `from` to direction `to` (degrees, counterclockwise from outboard, y up). */
export function arcPoints(centre: Point, radius: number, from: number, to: number): Point[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 6));
  return Array.from({ length: steps + 1 }, (_, step) => {
    const angle = radians(from + ((to - from) * step) / steps);
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/** Tenths of a px are as fine as a picture gets. */
export function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** SVG path data through picture points. */
export function pathThrough(points: readonly Point[], closed = false): string {
  const steps = points.map(({ x, y }, index) => `${index ? "L" : "M"}${tenths(x)} ${tenths(y)}`);
  return `${steps.join("")}${closed ? "Z" : ""}`;
}

/** SVG path data of a closed curve that touches the middle of each side of the polygon. */
export function roundedThrough(points: readonly Point[]): string {
  const middles = points.map((point, index) =>
    between(point, points[(index + 1) % points.length] ?? point, 0.5),
  );
  const first = middles[0];
  if (first === undefined) return "";
  const turns = points.slice(1).concat(points.slice(0, 1));
  const steps = turns.map((corner, index) => {
    const end = middles[index + 1] ?? first;
    return `Q${tenths(corner.x)} ${tenths(corner.y)} ${tenths(end.x)} ${tenths(end.y)}`;
  });
  return `M${tenths(first.x)} ${tenths(first.y)}${steps.join("")}Z`;
}

function within(point: Point, frame: Frame): Point {
  return {
    x: Math.min(Math.max(point.x, frame.left), frame.right),
    y: Math.min(Math.max(point.y, frame.top), frame.bottom),
  };
}

/** Where the pieces of a dimension go on the picture, px. */
export interface DimensionPlan {
  readonly a: Point;
  readonly b: Point;
  /** The ends of the dimension line, beside a and b. */
  readonly lineA: Point;
  readonly lineB: Point;
  readonly badgeA: Point;
  readonly badgeB: Point;
  readonly label: Point;
}

const badgeBeyond = 15;
const labelClear = 12;

/**
 * A drafting dimension from a to b: its line runs `offset` px beside them on the side of `away`, the
 * letters stand beyond its ends, so that they stay apart however short it is. The label sits on the
 * line where that is long enough, else, or where it is asked for, beside it. Everything is kept inside `frame`.
 *
 * @param along unit direction from a to b on the picture, given because a and b may coincide
 */
export function planDimension(
  a: Point,
  b: Point,
  along: Point,
  away: Point,
  offset: number,
  labelSize: { readonly width: number; readonly height: number },
  frame: Frame,
  labelBeside = false,
): DimensionPlan {
  const turned = quarterTurn(along);
  const normal =
    turned.x * away.x + turned.y * away.y < 0 ? { x: -turned.x, y: -turned.y } : turned;
  const lineA = add(a, normal, offset);
  const lineB = add(b, normal, offset);
  const room = inset(frame, 11, 11);
  const extentAlong = Math.abs(along.x) * labelSize.width + Math.abs(along.y) * labelSize.height;
  const extentAcross = Math.abs(normal.x) * labelSize.width + Math.abs(normal.y) * labelSize.height;
  const fits = !labelBeside && distance(a, b) > extentAlong + 24;
  const middle = between(lineA, lineB, 0.5);
  const label = fits ? middle : add(middle, normal, extentAcross / 2 + labelClear);
  return {
    a,
    b,
    lineA,
    lineB,
    badgeA: within(add(lineA, along, -badgeBeyond), room),
    badgeB: within(add(lineB, along, badgeBeyond), room),
    label: within(label, inset(frame, labelSize.width / 2 + 2, labelSize.height / 2 + 2)),
  };
}

/** Where the pieces of an angle go on the picture, px. */
export interface AnglePlan {
  readonly vertex: Point;
  readonly referenceEnd: Point;
  readonly lineEnd: Point;
  readonly arc: readonly Point[];
  /** From the reference the way that counts as plus, ending in an arrowhead. */
  readonly plusArc: readonly Point[];
  readonly plus: Point;
  readonly badgeA: Point;
  readonly badgeB: Point;
  readonly label: Point;
}

const plusDegrees = 15;

/**
 * An angle from a reference direction to a line, both counterclockwise from outboard in degrees; the
 * line goes `reach` mm from `vertex`. The label stands across the reference from the line, `clearOf` mm off it.
 */
export function planAngle(
  view: View,
  vertex: Point,
  reference: number,
  line: number,
  positive: 1 | -1,
  reach: number,
  labelSize: { readonly width: number; readonly height: number },
  frame: Frame,
  clearOf = 0,
): AnglePlan {
  const px = (radius: number, degrees: number, about = vertex) =>
    view.at(arcPoints(about, radius / view.scale, degrees, degrees)[0] ?? about);
  const reachPx = reach * view.scale;
  const arcRadius = Math.max(0.66 * reachPx, 30);
  const plusRadius = reachPx + 40;
  const plusEnd = reference + positive * plusDegrees;
  const lineSide = Math.sign(line - reference) || positive;
  const unit = view.turned(arcPoints({ x: 0, y: 0 }, 1, reference, reference)[0] ?? { x: 1, y: 0 });
  const across = view.turned(
    arcPoints({ x: 0, y: 0 }, 1, reference - 90 * lineSide, reference - 90 * lineSide)[0] ?? unit,
  );
  const clear =
    (Math.abs(across.x) * labelSize.width + Math.abs(across.y) * labelSize.height) / 2 +
    Math.max(labelClear, clearOf * view.scale);
  const room = inset(frame, 11, 11);
  return {
    vertex: view.at(vertex),
    referenceEnd: px(plusRadius + 8, reference),
    lineEnd: px(reachPx, line),
    arc: arcPoints(vertex, arcRadius / view.scale, reference, line).map(view.at),
    plusArc: arcPoints(vertex, plusRadius / view.scale, reference, plusEnd).map(view.at),
    plus: within(px(plusRadius + 1, plusEnd + positive * (700 / plusRadius)), room),
    badgeA: within(px(-badgeBeyond - 4, line), room),
    badgeB: within(px(reachPx + badgeBeyond, line), room),
    label: within(
      add(px(arcRadius, reference), across, clear),
      inset(frame, labelSize.width / 2 + 2, labelSize.height / 2 + 2),
    ),
  };
}

function inset(frame: Frame, x: number, y: number): Frame {
  return {
    left: frame.left + x,
    top: frame.top + y,
    right: frame.right - x,
    bottom: frame.bottom - y,
  };
}

export function clamp(value: number, least: number, greatest: number): number {
  return Math.min(Math.max(value, least), greatest);
}

/** A tire where nothing is known of it, mm. */
export const tyreRadius = 370;
export const tyreWidth = 230;

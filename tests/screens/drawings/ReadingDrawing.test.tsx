import { cleanup, render } from "@testing-library/preact";
import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import type { LayoutKind, Side } from "../../../src/physics/fitment.ts";
import {
  geometryRegistry,
  isGeometryReadingName,
} from "../../../src/physics/layouts/geometryRegistry.ts";
import { layoutKinds } from "../../../src/physics/readings/index.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import {
  type DrawingValues,
  drawnReadings,
  type PicturedReading,
} from "../../../src/screens/drawings/drawnNumbers.ts";
import { picturedWords } from "../../../src/screens/drawings/picturedWords.ts";
import {
  ReadingDrawing,
  type ReadingDrawingProps,
} from "../../../src/screens/drawings/ReadingDrawing.tsx";
import { viewOf } from "../../../src/screens/drawings/viewOf.ts";
import { layoutsOnScreen } from "../../../src/screens/layouts/layoutsOnScreen.ts";

afterEach(cleanup);

const kinds = layoutKinds;
const pairs = kinds.flatMap((kind) =>
  drawnReadings(kind).map((reading) => [kind, reading] as const),
);
const everyReading = [...new Set(pairs.map(([, reading]) => reading))];
const isAngle = (reading: PicturedReading) =>
  isGeometryReadingName(reading) && geometryRegistry[reading].sort === "angle";
const isLean = (reading: PicturedReading) => /Lean$/.test(reading);

function draw(
  props: Partial<ReadingDrawingProps> & { layoutKind: LayoutKind; reading: PicturedReading },
) {
  const { container, unmount } = render(
    <ReadingDrawing values={{}} side="left" unit="mm" {...props} />,
  );
  const svg = container.querySelector("svg");
  if (svg === null) throw new Error("no drawing");
  return { svg, unmount };
}

function pointOf(svg: SVGSVGElement, name: "a" | "b") {
  const circle = svg.querySelector(`.point-${name}`);
  return { x: Number(circle?.getAttribute("cx")), y: Number(circle?.getAttribute("cy")) };
}

function everyAttribute(svg: SVGSVGElement): string {
  return [svg, ...svg.querySelectorAll("*")]
    .flatMap((element) => element.getAttributeNames().map((name) => element.getAttribute(name)))
    .join("\n");
}

/** Anything a record might hold: usual, absurd, negative, not finite, absent. */
const anyNumber = fc.oneof(
  fc.double({ min: -2000, max: 4000 }),
  fc.double(),
  fc.constantFrom(0, -0, Number.NaN, Infinity, -Infinity, Number.MAX_VALUE, 5e-324, undefined),
);
const anyValues = fc.record(Object.fromEntries(everyReading.map((name) => [name, anyNumber])), {
  requiredKeys: [],
}) as fc.Arbitrary<DrawingValues>;

const side = fc.constantFrom<Side>("left", "right");

describe.each(pairs)("%s, %s", { timeout: 30_000 }, (layoutKind, reading) => {
  it("has finite numbers only, and its marks inside the picture, whatever the record holds", () => {
    fc.assert(
      fc.property(
        anyValues,
        side,
        fc.constantFrom("mm", "in") as fc.Arbitrary<"mm" | "in">,
        fc.constantFrom("front", "rear") as fc.Arbitrary<"front" | "rear">,
        fc.constantFrom("wheel", "stop") as fc.Arbitrary<"wheel" | "stop">,
        fc.constantFrom(undefined, "upper", "carriesWheel"),
        (values, drawnSide, unit, axle, at, armRole) => {
          const { svg, unmount } = draw({
            layoutKind,
            reading,
            values,
            side: drawnSide,
            unit,
            axle,
            at,
            armRole,
          });
          const attributes = everyAttribute(svg);
          expect(attributes).not.toMatch(/NaN|Infinity|undefined|null|e[+-]?\d/);
          expect(svg.textContent).not.toMatch(/NaN|Infinity|undefined/);
          for (const badge of svg.querySelectorAll(".badge circle")) {
            const [x, y] = [Number(badge.getAttribute("cx")), Number(badge.getAttribute("cy"))];
            expect(x).toBeGreaterThanOrEqual(10);
            expect(x).toBeLessThanOrEqual(330);
            expect(y).toBeGreaterThanOrEqual(24);
            expect(y).toBeLessThanOrEqual(216);
          }
          const label = svg.querySelector(".label rect");
          const [left, width] = [label?.getAttribute("x"), label?.getAttribute("width")].map(
            Number,
          );
          expect(left).toBeGreaterThanOrEqual(0);
          expect((left ?? 0) + (width ?? 0)).toBeLessThanOrEqual(340);
          unmount();
        },
      ),
      { numRuns: 6 },
    );
  });

  it("has a title and a description that name both ends", () => {
    const { svg } = draw({ layoutKind, reading, side: "right" });
    const words = picturedWords(reading, { kind: layoutKind });
    const [titleId, descriptionId] = (svg.getAttribute("aria-labelledby") ?? "").split(" ");
    const title = svg.querySelector("title");
    const description = svg.querySelector("desc");
    expect(title?.id).toBe(titleId);
    expect(description?.id).toBe(descriptionId);
    expect(title?.textContent).toBe(`${words.name}, right side`);
    expect(description?.textContent).toContain(words.how);
    expect(description?.textContent).toContain(words.a);
    expect(description?.textContent).toContain("Not yet measured.");
    expect(`${words.a}\n${words.b}`).toMatch(/^.{0,22}\n.{0,22}$/);
  });
});

const oneSided = pairs.filter(
  ([, reading]) => !["cornerMass", "track", "stopSpacing"].includes(reading),
);

describe.each(oneSided)("left and right: %s, %s", (layoutKind, reading) => {
  it("says from where it is seen, and the side where it has one", () => {
    const caption = (props: Parameters<typeof draw>[0]) => {
      const { svg, unmount } = draw(props);
      const text = svg.querySelector(".caption")?.textContent;
      unmount();
      return text;
    };
    expect(caption({ layoutKind: "axle", reading: "gap", axle: "rear" })).toBe("Left, from behind");
    expect(caption({ layoutKind: "axle", reading: "track", axle: "rear" })).toBe("From behind");
    expect(caption({ layoutKind: "axle", reading: "stopSpacing" })).toBe("From the front");
    expect(caption({ layoutKind: "arm", reading: "rideHeight" })).toBe("Left, from the side");
  });

  it("is mirrored for the other side", () => {
    const values: DrawingValues = { armAngle: 8, stopLean: 10, mountLineAngle: 12 };
    const left = draw({ layoutKind, reading, values, side: "left" }).svg;
    const right = draw({ layoutKind, reading, values, side: "right" }).svg;
    const [leftA, leftB] = [pointOf(left, "a"), pointOf(left, "b")];
    const [rightA, rightB] = [pointOf(right, "a"), pointOf(right, "b")];
    expect(leftA.x + rightA.x).toBeCloseTo(340, 0);
    expect(leftB.x + rightB.x).toBeCloseTo(340, 0);
    expect(leftA.y).toBeCloseTo(rightA.y, 0);
    expect(leftB.y).toBeCloseTo(rightB.y, 0);
    const behind = draw({ layoutKind, reading, values, side: "left", axle: "rear" }).svg;
    const alikeFromBehind = reading === "rideHeight" || viewOf(reading)?.from === "above";
    expect(pointOf(behind, "a").x).toBeCloseTo(alikeFromBehind ? leftA.x : rightA.x, 0);
  });
});

/** Numbers of each length reading that are drawn as they are. */
const trueRange: { readonly [Name in PicturedReading]?: readonly [number, number] } = {
  pivotToStop: [40, 900],
  pivotToMount: [40, 900],
  pivotToOuter: [120, 1500],
  boltSpacing: [60, 900],
  limitDistance: [40, 900],
  damperLength: [150, 1000],
  track: [900, 2600],
  stopSpacing: [200, 2400],
  otherArmLength: [80, 1000],
  jointHeight: [120, 600],
  jointInset: [1, 200],
  tyreOffset: [1, 300],
  wheelCentreAbove: [1, 400],
  lowerArmLength: [120, 1000],
  jointToTop: [300, 1200],
  pivotHeight: [80, 1200],
  pressedHeight: [8, 400],
  seatToPad: [8, 500],
  gap: [0, 400],
  rideHeight: [150, 1500],
  freeHeight: [12, 400],
  usableCompression: [1, 300],
  "limit:tyre": [0, 400],
  "limit:damper": [0, 400],
  "limit:spring": [0, 400],
  "limit:metal": [0, 400],
  "limit:other": [0, 400],
};
const lengths = pairs.filter(([, reading]) => trueRange[reading] !== undefined);
const angles = pairs.filter(([, reading]) => isAngle(reading));

describe.each(lengths)("to scale: %s, %s", { timeout: 30_000 }, (layoutKind, reading) => {
  it("has A and B as far apart as the number says", () => {
    const [least, greatest] = trueRange[reading] ?? [0, 0];
    fc.assert(
      fc.property(
        fc.double({ min: least, max: greatest, noNaN: true }),
        side,
        (value, drawnSide) => {
          const values = { freeHeight: 400, [reading]: value };
          const { svg, unmount } = draw({ layoutKind, reading, values, side: drawnSide });
          const scale = Number(svg.getAttribute("data-px-per-mm"));
          const [a, b] = [pointOf(svg, "a"), pointOf(svg, "b")];
          expect(scale).toBeGreaterThan(0);
          expect(Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - scale * value)).toBeLessThan(0.2);
          unmount();
        },
      ),
      { numRuns: 6 },
    );
  });
});

describe.each(angles)("to scale: %s, %s", { timeout: 30_000 }, (layoutKind, reading) => {
  it("leans its line by the angle, positive the way the words say", () => {
    fc.assert(
      fc.property(fc.double({ min: -34, max: 34, noNaN: true }), (value) => {
        const { svg, unmount } = draw({ layoutKind, reading, values: { [reading]: value } });
        const [a, b] = [pointOf(svg, "a"), pointOf(svg, "b")];
        const line = { x: b.x - a.x, y: a.y - b.y };
        const drawn = isLean(reading) ? Math.atan2(-line.x, line.y) : Math.atan2(-line.y, line.x);
        const rounding = Math.atan2(0.15, Math.hypot(line.x, line.y));
        expect(Math.abs(drawn - (value * Math.PI) / 180)).toBeLessThan(rounding);
        unmount();
      }),
      { numRuns: 6 },
    );
    const { svg } = draw({ layoutKind, reading });
    const { plusLean = "top toward the pivot = +" } = layoutsOnScreen[layoutKind].words;
    const words = isLean(reading) ? plusLean : "outer end lower = +";
    expect(svg.textContent).toContain(words);
  });
});

describe("the number", () => {
  const label = (props: Partial<ReadingDrawingProps>) =>
    withPlainSpaces(
      draw({ layoutKind: "arm", reading: "gap", ...props }).svg.querySelector(".label text")
        ?.textContent ?? "",
    );

  it("is shown in the person's unit, or as it was typed, or as not known", () => {
    expect(label({ values: { gap: 58.7 } })).toBe("58.7 mm");
    expect(label({ values: { gap: 58.7 }, unit: "in" })).toBe("2.31 in");
    expect(label({ values: { gap: 58.7 }, unit: "in", text: "2 5/16 in" })).toBe("2 5/16 in");
    expect(label({ unit: "in" })).toBe("? in");
    expect(label({ reading: "armAngle", values: { armAngle: -8 } })).toBe("−8.0°");
    expect(label({ reading: "armAngle" })).toBe("?°");
    expect(label({ reading: "cornerMass", values: { cornerMass: 560 } })).toBe("560 kg");
    expect(label({ reading: "cornerMass", unit: "in" })).toBe("? lb");
  });

  it("is shown as it is where the picture can't follow it", () => {
    expect(label({ values: { gap: 4000 } })).toBe("4000.0 mm");
  });
});

import { cleanup, render } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import type { GeometryReadingName, LayoutKind, LimitKind } from "../../../src/physics/fitment.ts";
import { layoutKinds } from "../../../src/physics/layouts/layoutKinds.ts";
import type { ReadingId } from "../../../src/physics/readings/readingId.ts";
import { drawnReadingOf } from "../../../src/screens/drawings/drawingValues.ts";
import { pairOf } from "../../../src/screens/drawings/rightWrong/pairOf.ts";
import { RightWrong } from "../../../src/screens/drawings/rightWrong/RightWrong.tsx";
import { pairSize } from "../../../src/screens/drawings/rightWrong/shapes.tsx";
import { readingWords } from "../../../src/screens/readings/readingWords.ts";

afterEach(cleanup);

const kinds = layoutKinds;
const limits: readonly LimitKind[] = ["tyre", "damper", "spring", "metal", "other"];
const ofCorner = ["left.gap", "left.rideHeight", "left.cornerMassKg", "stop.freeHeight"] as const;

interface Case {
  readonly id: ReadingId;
  readonly kind: LayoutKind;
  readonly limit?: LimitKind;
  readonly at?: "wheel" | "stop";
}

const drawnGeometry: { readonly [Kind in LayoutKind]?: readonly GeometryReadingName[] } = {
  arm: ["pivotToStop", "pivotToOuter", "armAngle", "stopLineAngle", "stopLean"],
  damper: [
    "pivotToMount",
    "pivotToOuter",
    "damperLength",
    "armAngle",
    "mountLineAngle",
    "stopLean",
  ],
  strut: ["stopLean"],
  axle: ["track", "stopSpacing", "stopLean"],
};

const geometry: Case[] = kinds.flatMap((kind) =>
  (drawnGeometry[kind] ?? []).map((name) => ({ id: name, kind })),
);
const corners: Case[] = kinds.flatMap((kind) => ofCorner.map((id) => ({ id, kind })));
const hard: Case[] = limits.flatMap((limit) =>
  (["wheel", "stop"] as const).map((at) => ({
    id: "left.limits.0",
    kind: "arm" as const,
    limit,
    at,
  })),
);

/** Words of the guide's sentence that the picture must be about, by the reading's last name. */
const about: { readonly [name: string]: RegExp } = {
  pivotToStop: /one bolt/i,
  pivotToOuter: /one bolt/i,
  pivotToMount: /one bolt/i,
  armAngle: /bent/,
  stopLineAngle: /arm/,
  mountLineAngle: /arm/,
  damperLength: /off the ground/,
  track: /outside to outside/i,
  stopSpacing: /rail to frame rail/i,
  rideHeight: /floor/,
  cornerMassKg: /scale alone/,
  freeHeight: /plate/,
};

describe("right and wrong", () => {
  it.each([...geometry, ...corners, ...hard])("are drawn for %o", ({ id, kind, limit, at }) => {
    const drawn = drawnReadingOf(id, limit);
    if (!drawn) throw new Error(`no drawing of ${id}`);
    const { container } = render(<RightWrong reading={drawn} kind={kind} at={at} />);
    const [right, wrong] = [...container.querySelectorAll("figure")];
    expect(right?.textContent).toMatch(/^Right./);
    expect(wrong?.textContent).toMatch(/^Wrong./);
    for (const figure of [right, wrong]) {
      const picture = figure?.querySelector("svg.drawing");
      expect(picture?.getAttribute("aria-hidden")).toBe("true");
      expect(picture?.querySelectorAll(".tape, .tape-fill").length).toBeGreaterThan(0);
    }
    expect(right?.querySelector("svg.drawing")?.innerHTML).not.toBe(
      wrong?.querySelector("svg.drawing")?.innerHTML,
    );
  });

  it.each(geometry.concat(corners))("say what the guide says goes wrong: %o", ({ id, kind }) => {
    const drawn = drawnReadingOf(id);
    const pattern = about[id.split(".").at(-1) ?? ""];
    if (!drawn || !pattern) return;
    expect(pairOf(drawn, kind)?.wrong.words).toMatch(pattern);
    expect(readingWords(id, { kind }).wrong).toMatch(pattern);
  });

  it("keep every point inside the picture", () => {
    for (const { id, kind, limit, at } of [...geometry, ...corners, ...hard]) {
      const drawn = drawnReadingOf(id, limit);
      if (!drawn) continue;
      const { container } = render(<RightWrong reading={drawn} kind={kind} at={at} />);
      for (const end of container.querySelectorAll("circle.tape-end")) {
        // Turned groups are measured in their own axes; none reaches further than the picture is wide.
        expect(Math.abs(Number(end.getAttribute("cx")))).toBeLessThanOrEqual(pairSize.width);
        expect(Math.abs(Number(end.getAttribute("cy")))).toBeLessThanOrEqual(pairSize.height);
      }
      cleanup();
    }
  });

  it("are none for what has no picture", () => {
    expect(pairOf("usableCompression", "arm")).not.toBeNull();
    const { container } = render(<RightWrong reading={"nothing" as "gap"} kind="arm" />);
    expect(container.innerHTML).toBe("");
  });
});

import { cleanup, render } from "@testing-library/preact";
import { afterEach, expect, it } from "vitest";
import { TravelLadder } from "../../../src/screens/answer/ladder/TravelLadder.tsx";
import { assessed, demoFitment } from "./demoChecks.ts";

afterEach(cleanup);

function cornerOfDemo() {
  const [corner] = assessed(demoFitment("arm-fits")).corners;
  if (!corner) throw new Error("no corner");
  return corner;
}
const left = cornerOfDemo();

/** Every label's lines, each with its height in the picture. */
function labels(loadedSagMm: number | null) {
  const { container, unmount } = render(
    <TravelLadder assessed={{ ...left, loadedSagMm }} unit="in" />,
  );
  const told = [...container.querySelectorAll("g.rung:has(text)")].map((rung) =>
    [...rung.querySelectorAll("text")].map((line) => ({
      text: line.textContent ?? "",
      y: Number(line.getAttribute("y")),
    })),
  );
  unmount();
  return told;
}

it("breaks a long name where two bars stand side by side, so that none runs into the next bar", () => {
  const told = labels(7);
  expect(told).toHaveLength(8);
  const names = told.map((lines) => lines.map(({ text }) => text));
  expect(
    names.filter(([first, second]) => first === "fully" && second === "compressed"),
  ).toHaveLength(2);
  for (const { text } of told.flat()) expect(text.length, text).toBeLessThanOrEqual(13);
});

it("has every line of a label below the one before, and no label in another", () => {
  for (const sag of [7, null]) {
    const told = labels(sag);
    for (const lines of told) {
      const heights = lines.map(({ y }) => y);
      expect(heights).toEqual([...new Set(heights)].sort((a, b) => a - b));
    }
    const ofOneBar = told.slice(0, 4).sort((a, b) => (a[0]?.y ?? 0) - (b[0]?.y ?? 0));
    for (const [index, lines] of ofOneBar.entries()) {
      const next = ofOneBar[index + 1]?.[0]?.y ?? Infinity;
      expect(next - (lines.at(-1)?.y ?? 0)).toBeGreaterThanOrEqual(14);
    }
  }
});

it("leaves a name in one line where one bar has all the room", () => {
  const names = labels(null).map(([first]) => first?.text);
  expect(names.some((name) => name?.startsWith("fully compressed"))).toBe(true);
});

import { cleanup, render, screen, within } from "@testing-library/preact";
import { afterEach, expect, it } from "vitest";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { PackTest } from "../../../src/records/pack/pack.ts";
import { TestReport } from "../../../src/screens/pack/TestReport.tsx";

afterEach(cleanup);

const test: PackTest = {
  id: "9b2f6f1e-6a0e-4a53-9e0f-3d1f0a3c5b11",
  file: "bench.csv",
  importedAt: "2026-03-01T10:00:00.000Z",
  rows: 3000,
  kind: "timed",
  remarks: [],
  staticSpeedMmPerS: 5,
  curve: [
    [10, 800, 0.9],
    [40, 4400, 62],
  ],
  sample: [],
};

it.each([
  ["in", /zero was 0\.10\sin off\.$/],
  ["mm", /zero was 2\.5\smm off\.$/],
] as const)("what was put right is told in the page's units: %s", (unit, words) => {
  const told: PackTest = {
    ...test,
    remarks: ["Its zero was 2.5 mm off."],
    remarkSentences: [["Its zero was ", { kind: "length", value: 2.54 }, " off."]],
  };
  const stops = demoPack.stops.map((stop) =>
    stop.id === "tall-firm" ? { ...stop, tests: [told] } : stop,
  );
  render(<TestReport pack={{ ...demoPack, stops }} id="tall-firm" test={test.id} unit={unit} />);
  expect(screen.getByText(words)).toBeTruthy();
});

it.each([
  ["in", "0.40 lbf", "27 lbf"],
  ["mm", "1.8 N", "122 N"],
] as const)("a small ± of force on paper is not a 0: %s", (unit, small, great) => {
  const stops = demoPack.stops.map((stop) =>
    stop.id === "tall-firm" ? { ...stop, tests: [test] } : stop,
  );
  render(<TestReport pack={{ ...demoPack, stops }} id="tall-firm" test={test.id} unit={unit} />);
  const table = screen.getByRole("table", { name: /Static curve, each force with its 95 % ±/ });
  expect(within(table).getByText(small)).toBeTruthy();
  expect(within(table).getByText(great)).toBeTruthy();
});

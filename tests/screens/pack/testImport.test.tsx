import { act, cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import type { ImportHandlers, TestImporter } from "../../../src/compute/testImporter.ts";
import type { LengthUnit } from "../../../src/records/entry/units.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { importTestText } from "../../../src/records/testRows/analyseTest.ts";
import type { ImportOptions } from "../../../src/records/testRows/testFile.ts";
import { TestImportScreen } from "../../../src/screens/pack/TestImportScreen.tsx";
import { trueStops } from "../../support/testMachine/designs.ts";
import { ramp, sequence, triangle } from "../../support/testMachine/motions.ts";
import { measure } from "../../support/testMachine/testMachine.ts";

const stop = demoPack.stops.find(({ id }) => id === "tall-firm");
if (stop === undefined) throw new Error("no stop");
const truth = trueStops.oneBranch;
if (truth === undefined) throw new Error("no such stop");
const { timeS, depthMm, forceN } = measure(
  truth,
  sequence([...ramp(0, 42, 4.5), triangle(0, 38, 100, 2), triangle(0, 38, 400, 3)], 0.2),
  { samplesPerS: 300, whiteN: 5 },
);

function csv(force: (force: number) => number, head = "Time [s],Depth [mm],Force [N]"): string {
  return `${head}\n${Array.from(timeS, (time, row) =>
    [time, depthMm[row] ?? 0, force(forceN[row] ?? 0)].map((value) => value.toFixed(4)).join(","),
  ).join("\n")}\n`;
}

afterEach(cleanup);

/** The screen with a file read, as a worker would answer it. */
async function importing(text: string, unit: LengthUnit = "mm"): Promise<ImportOptions> {
  let handlers: ImportHandlers | null = null;
  let options: ImportOptions = {};
  const importer: TestImporter = {
    start: (_, given, asked) => {
      handlers = given;
      options = asked ?? {};
      return () => undefined;
    },
    dispose: () => undefined,
  };
  render(
    <TestImportScreen pack={demoPack} id="tall-firm" unit={unit} startImporter={() => importer} />,
  );
  const input = screen.getByLabelText<HTMLInputElement>("Test file");
  Object.defineProperty(input, "files", { value: [new File([text], "bench.csv")] });
  fireEvent.change(input);
  const tests = importTestText(text, "bench.csv", options);
  if (!tests.ok) throw new Error(tests.fault.code);
  await act(() => handlers?.onDone(tests.value));
  return options;
}

const keep = () => screen.getByRole<HTMLButtonElement>("button", { name: "Save" });

describe("a test that was read", () => {
  it("shows its loss with its ±, and may be kept where no remark stands", async () => {
    await importing(csv((force) => force));
    expect(screen.getByText("Lost at rest, a share of the force")).toBeTruthy();
    expect(screen.getAllByText(/^Fades within/).length).toBeGreaterThan(0);
    expect(screen.getByText("Use this loss")).toBeTruthy();
    expect(keep().disabled).toBe(false);
  });

  it("is not kept by a tap while a remark stands unread", async () => {
    await importing(csv((force) => -force));
    expect(screen.getByText(/counts a pushing force as negative/)).toBeTruthy();
    expect(keep().disabled).toBe(true);
    fireEvent.click(screen.getByRole("checkbox", { name: /I have read/ }));
    expect(keep().disabled).toBe(false);
  });

  it("asks one by one about what looks like a slip", async () => {
    await importing(csv((force) => force, "Time [s],Depth [mm],Force [kN]"));
    const marks = screen.getAllByRole("checkbox", { name: "It is right as it is" });
    expect(marks.length).toBeGreaterThan(1);
    for (const mark of marks) {
      expect(keep().disabled).toBe(true);
      fireEvent.click(mark);
    }
    expect(keep().disabled).toBe(false);
  });
});

describe("the speed up to which rows are static", () => {
  it.each([
    ["mm", "5", "mm/s", 5],
    ["in", "0.2", "in/s", 5.08],
  ] as const)("is asked in the person's unit: %s", async (unit, shown, name, mmPerS) => {
    const { staticSpeedMmPerS } = await importing(
      csv((force) => force),
      unit,
    );
    const field = screen.getByLabelText<HTMLInputElement>(/Rows up to this speed are static/);
    expect(field.value).toBe(shown);
    expect(screen.getByText(name)).toBeTruthy();
    expect(staticSpeedMmPerS).toBeCloseTo(mmPerS, 10);
  });
});

describe("a file of two tests", () => {
  it("asks which one is this stop's before anything is shown of either", async () => {
    await importing(`${csv((force) => force)}The other stop\n${csv((force) => 2 * force)}`);
    expect(screen.queryByRole("button", { name: "Save" })).toBeNull();
    fireEvent.click(screen.getByRole("radio", { name: /The other stop/ }));
    expect(keep().disabled).toBe(true);
    expect(screen.getByText(/holds 2 tests, each with headings/)).toBeTruthy();
  });
});

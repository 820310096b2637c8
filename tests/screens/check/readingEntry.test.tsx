import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  changeProgress,
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { chooseLayout } from "../../../src/records/filling/changes.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { changePreferences } from "../../../src/screens/preferences.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import {
  choose,
  freshPhone,
  heading,
  keep,
  kept,
  reload,
  startApp,
  tap,
  type,
} from "../startApp.tsx";

let stored: StoredCheck;

beforeEach(async () => {
  freshPhone();
  const fresh = chooseLayout(withSides(newStoredCheck("Tern"), "both"), "arm");
  const named = changeRecord(fresh, (record) => ({
    ...record,
    axle: "front",
    vehicle: { label: "Tern", platformId: null, liftMm: 0, use: "daily" },
  }));
  stored = changeProgress(named, { cautionsFor: "level" });
  await keep(stored);
});

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const at = async (step: string, name: string | RegExp) => {
  startApp(`#/check/${stored.id}/${step}`);
  await heading(name);
};
const pivotToStop = "Distance from pivot to stop";

async function keptReading(name: "pivotToStop" | "armAngle") {
  await waitFor(() => screen.getByText("Saved"));
  return (await kept(stored.id)).record.layout?.readings?.[name];
}

describe("typing a reading", () => {
  // The exact inch of NIST SP 811, Appendix B: 25.4 mm.
  it.each([
    ["58,7", "mm", 58.7],
    ["5.87 cm", "mm", 58.7],
    ["2 5/16", "inches", 2.3125 * 25.4],
    ["2-5/16", "inches", 2.3125 * 25.4],
    ["5/16", "inches", 0.3125 * 25.4],
    ["2.31", "inches", 2.31 * 25.4],
    ['2 5/16"', "mm", 2.3125 * 25.4],
  ] as const)("takes “%s” with %s chosen", async (text, unit, mm) => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await choose(unit);
    await type(pivotToStop, text);
    await waitFor(async () =>
      expect((await keptReading("pivotToStop"))?.values[0]).toBeCloseTo(mm, 9),
    );
  });

  it("keeps what can't be read, says so, and shows it again after a reload", async () => {
    await at("left.gap", "Left: Gap");
    const input = await type("Left gap", "about 2o");
    expect(input.value).toBe("about 2o");
    await screen.findByText(/can't|cannot|not a number|unit is not known/);
    expect(screen.getByRole("button", { name: "Continue, fix later" })).toBeTruthy();
    await reload();
    await heading("Left: Gap");
    expect((screen.getByLabelText("Left gap") as HTMLInputElement).value).toBe("about 2o");
    const { record, entries } = await kept(stored.id);
    expect(record.corners[0]?.gap).toBeUndefined();
    expect(entries["left.gap"]?.texts).toEqual(["about 2o"]);
  });

  it("comes back to the same reading after a reload in mid-check", async () => {
    await at("pivotToOuter", "Left: Pivot line to outer joint");
    await type("Distance from pivot to outer joint", "411");
    await waitFor(() => screen.getByText("Saved"));
    cleanup();
    startApp(`#/check/${stored.id}`);
    await heading("Left: Pivot line to outer joint");
    const input = screen.getByLabelText("Distance from pivot to outer joint") as HTMLInputElement;
    expect(input.value).toBe("411");
  });

  it("is asked in the units that the check has of its own, after a reload too", async () => {
    await at("vehicle", "The vehicle");
    await choose("US");
    await reload();
    await heading("The vehicle");
    cleanup();
    startApp(`#/check/${stored.id}/pivotToStop`);
    await heading("Left: Pivot line to stop");
    expect((screen.getByRole("radio", { name: "inches" }) as HTMLInputElement).checked).toBe(true);
    await type(pivotToStop, "6 1/4");
    await waitFor(() => screen.getByText("Saved"));
    expect((await keptReading("pivotToStop"))?.values).toEqual([158.75]);
    cleanup();
    const other = { ...stored, id: "other", record: { ...stored.record, id: "other" } };
    await keep(other);
    startApp("#/check/other/pivotToStop");
    await heading("Left: Pivot line to stop");
    expect((screen.getByRole("radio", { name: "mm" }) as HTMLInputElement).checked).toBe(true);
  });

  it("opens in the unit it was typed in, whatever the person now prefers", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await choose("inches");
    await type(pivotToStop, "6 1/4");
    await waitFor(() => screen.getByText("Saved"));
    cleanup();
    changePreferences({ length: "mm" });
    startApp(`#/check/${stored.id}/pivotToStop`);
    await heading("Left: Pivot line to stop");
    expect((screen.getByLabelText(pivotToStop) as HTMLInputElement).value).toBe("6 1/4");
    expect((screen.getByRole("radio", { name: "inches" }) as HTMLInputElement).checked).toBe(true);
    expect((await kept(stored.id)).record.layout?.readings?.pivotToStop?.typed).toEqual([
      "6 1/4 in",
    ]);
  });

  it("asks politely about millimetres that must have been inches, and takes the hint", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await type(pivotToStop, "6");
    await screen.findByText(/Was it measured in inches/);
    expect(screen.getByRole("button", { name: "Next" })).toBeTruthy();
    await tap("Yes, inches");
    await waitFor(() => expect(screen.queryByText(/Was it measured in inches/)).toBeNull());
    await waitFor(async () =>
      expect((await keptReading("pivotToStop"))?.values[0]).toBeCloseTo(152.4, 9),
    );
  });

  it("takes repeats, tells when they scatter, and takes one out again", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await type(pivotToStop, "152");
    await tap("Add a repeat");
    await type(`${pivotToStop}, time 2`, "172");
    await screen.findByText(/The repeats differ by 20.0 mm/);
    await screen.findByText(/Mean of 2: 162.0 mm/);
    await tap("Remove reading 2");
    await waitFor(() => expect(screen.queryByText(/The repeats differ/)).toBeNull());
    await waitFor(async () => expect((await keptReading("pivotToStop"))?.values).toEqual([152]));
  });

  it("takes the ± from the tool, remembers the tool, and keeps a ± that is typed", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await type(pivotToStop, "152");
    // No class on the tape, as class III: √((0.6 + 0.4 + 0.3)² + 0.5² + 2²) = 2.4372.
    await screen.findByText("Measured with: Tape, no class mark, ± 2.4 mm");
    await choose(/^Caliper/);
    // √(0.07² + 0.025² + 2²) = 2.0014
    await waitFor(async () =>
      expect(await keptReading("pivotToStop")).toMatchObject({
        tol: 2.01,
        tool: "caliper",
        reach: "awkward",
      }),
    );
    await choose("Both ends in plain view");
    await waitFor(async () => expect((await keptReading("pivotToStop"))?.tol).toBe(0.08));
    await type(/your own ±/, "0.8");
    await waitFor(async () => expect((await keptReading("pivotToStop"))?.tol).toBe(0.8));
    await screen.findByText("Measured with: your own ± 0.8 mm");
    await tap("Next");
    await heading("Left: Pivot line to outer joint");
    await type("Distance from pivot to outer joint", "411");
    await screen.findByText(/^Measured with: Caliper, ± 2 mm/);
  });

  it("says so where the tool does not reach that far", async () => {
    await at("left.gap", "Left: Gap");
    await type("Left gap", "21");
    await choose(/^Feeler gauge/);
    await screen.findByText(/A feeler gauge is for gaps up to 5 mm/);
    await type("Left gap", "1.2");
    await waitFor(() => expect(screen.queryByText(/A feeler gauge is for/)).toBeNull());
  });

  it("keeps a ± what it was when the number is taken in the other unit", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await type(pivotToStop, "5");
    await type(/your own ±/, "2");
    await choose("inches");
    await waitFor(async () =>
      expect(await keptReading("pivotToStop")).toMatchObject({ values: [127], tol: 2 }),
    );
  });

  it("types the minus of an angle by its meaning", async () => {
    await at("armAngle", "Left: Arm angle");
    const input = await type("Arm angle", "8,5");
    await choose("− higher at wheel");
    expect(input.value).toBe("-8,5");
    await waitFor(async () => expect((await keptReading("armAngle"))?.values).toEqual([-8.5]));
    await choose("+ lower at wheel");
    expect(input.value).toBe("8,5");
  });

  it("goes on with Enter only when there is something to go on from", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    const input = screen.getByLabelText(pivotToStop);
    fireEvent.keyDown(input, { key: "Enter" });
    expect(screen.getByRole("heading", { level: 1 }).textContent).toBe("Left: Pivot line to stop");
    await type(pivotToStop, "152");
    fireEvent.keyDown(input, { key: "Enter" });
    await heading("Left: Pivot line to outer joint");
  });

  it("loses nothing by back, skip and coming again", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await type(pivotToStop, "152");
    await tap("Next");
    await heading("Left: Pivot line to outer joint");
    await tap("Skip for now");
    await heading("Left: Arm angle");
    await tap("Back");
    await heading("Left: Pivot line to outer joint");
    await tap("Back");
    await heading("Left: Pivot line to stop");
    expect((screen.getByLabelText(pivotToStop) as HTMLInputElement).value).toBe("152");
    const steps = screen.getByRole("navigation", { name: "All steps" });
    expect(
      within(steps).getByRole("button", {
        name: /Pivot line to outer joint.*skipped, still needed/,
      }),
    ).toBeTruthy();
  });
});

describe("the way on from a reading", () => {
  it("is one main button, which says what it waits for and enters the number", async () => {
    await at("pivotToOuter", "Left: Pivot line to outer joint");
    const input = screen.getByLabelText("Distance from pivot to outer joint");
    input.blur();
    const next = () => screen.getByRole("button", { name: "Next" });
    expect(next().getAttribute("aria-disabled")).toBe("true");
    fireEvent.click(next());
    await screen.findByText("Something is still open here. Fill it in, or skip it.");
    expect(document.activeElement).toBe(input);
    expect(screen.getByRole("heading", { level: 1 }).textContent).toContain("outer joint");
    await type("Distance from pivot to outer joint", "411");
    await waitFor(() => expect(next().getAttribute("aria-disabled")).toBeNull());
    expect(screen.queryByText(/still open here/)).toBeNull();
    expect(screen.queryByRole("button", { name: /^Skip/ })).toBeNull();
  });

  it("begins in the number of an empty reading, and at the heading of one that is there", async () => {
    await at("pivotToStop", "Left: Pivot line to stop");
    await waitFor(() => expect(document.activeElement).toBe(screen.getByLabelText(pivotToStop)));
    await type(pivotToStop, "152");
    await tap("Next");
    await heading("Left: Pivot line to outer joint");
    await tap("Back");
    const title = await heading("Left: Pivot line to stop");
    await waitFor(() => expect(document.activeElement).toBe(title));
  });

  it("waits at the gap until it is said how the stop stands", async () => {
    await at("left.gap", "Left: Gap");
    const title = screen.getByRole("heading", { level: 1 });
    await waitFor(() => expect(document.activeElement).toBe(title));
  });
});

describe("a clearance read after the vehicle was moved", () => {
  it("has the friction in its ±, and leads back to the gap", async () => {
    const measured = storedFromRecord(demoRecord("arm-fits"));
    const moved = changeProgress(
      changeRecord(measured, (record) => ({
        ...record,
        corners: record.corners.map((corner) => ({ ...corner, settleMm: 3 })),
      })),
      { cautionsFor: "level" },
    );
    await keep(moved);
    startApp(`#/check/${moved.id}/left.limits.0`);
    await heading("Left: Clearance over the tire");
    const tolOf = async () =>
      (await kept(moved.id)).record.corners[0]?.limits[0]?.reading?.tol ?? Number.NaN;
    const before = await tolOf();
    fireEvent.click(
      within(
        screen.getByRole("group", { name: "Moved or bounced since the gap was read?" }),
      ).getByRole("radio", { name: "Yes" }),
    );
    await screen.findByText(/Friction may hold it ± 3.0 mm higher or lower/);
    await waitFor(async () => expect(await tolOf()).toBeCloseTo(Math.hypot(before, 3), 9));
    await tap("Read the gap again");
    await heading("Left: Gap");
  });
});

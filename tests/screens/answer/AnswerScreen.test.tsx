import { cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import type { LengthUnit } from "../../../src/records/entry/units.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import AnswerScreen from "../../../src/screens/answer/AnswerScreen.tsx";
import { vectorExamples as vectors } from "../../vectors/vectors.ts";
import { type DemoName, demoNames, demoRecord } from "./demoChecks.ts";
import { startDeskAssessor } from "./dispatcherAssessor.ts";

afterEach(cleanup);

function show(record: CheckRecord | StoredCheck, unit: LengthUnit = "mm") {
  const stored = "entries" in record ? record : storedFromRecord(record);
  const go = vi.fn<(step: string) => void>();
  const onChange = vi.fn<(changed: StoredCheck) => void>();
  const view = render(
    <AnswerScreen
      stored={stored}
      unit={unit}
      go={go}
      onChange={onChange}
      startAssessor={startDeskAssessor}
    />,
  );
  return { ...view, go, onChange };
}

const patience = { timeout: 15_000 };
const answered = () => waitFor(() => screen.getByText("Force, impact and stiffness"), patience);

function unfold(within: HTMLElement): void {
  const details = within.closest("details");
  if (!details) throw new Error("nothing to unfold");
  details.open = true;
  fireEvent(details, new Event("toggle"));
}

const words = {
  ok: "It fits",
  care: "Fits, with a warning",
  no: "It doesn't fit",
  unsure: "Not sure yet",
} as const;

type Word = keyof typeof words;

/** The worst of the vectors' own check states: no > unsure > care > ok. */
function wantedVerdict(name: DemoName): Word {
  const vector = vectors.find(({ id }) => id === demoRecord(name).id);
  const states = (vector?.corners ?? []).flatMap((corner) => [
    corner.clearance,
    String(corner.earlyContact),
    String(corner.stiffness),
  ]);
  const order: readonly Word[] = ["no", "unsure", "care", "ok"];
  return order.find((state) => states.includes(state)) ?? "ok";
}

it("an estimated stop is marked as one under the verdict and where it is set against another", async () => {
  const record = demoRecord("arm-fits");
  const estimated = { how: "from 60 Shore A, 60 mm across", forceShare: 0.25 };
  show({ ...record, stop: { ...record.stop, estimated } });
  await answered();
  const panel = screen.getByRole("heading", { level: 1 }).closest("section");
  expect(panel?.textContent).toContain(
    `The force curve of “${record.stop.name}” was not tested (from 60 Shore A, 60 mm across): its forces are taken as ± 25 %.`,
  );
  screen.getByText(
    `Or try each stop of the library here, and set one against ${record.stop.name} (estimate).`,
  );
});

describe.each(demoNames)("the answer to %s", (name) => {
  it.each(["mm", "in"] as const)(
    "gives the vectors' verdict and finite numbers, in %s",
    async (unit) => {
      const { container, onChange } = show(demoRecord(name), unit);
      await answered();
      expect(screen.getByRole("heading", { level: 1 }).textContent).toBe(
        words[wantedVerdict(name)],
      );
      for (const depth of ["groups", "figures within them"]) {
        for (const summary of container.querySelectorAll<HTMLElement>("summary")) unfold(summary);
        await waitFor(() => expect(container.querySelector("[data-figure]"), depth).toBeTruthy());
      }
      await waitFor(() => expect(container.querySelector(".worked-steps")).toBeTruthy());
      expect(container.querySelectorAll(".formula-result").length).toBeGreaterThan(25);
      expect(container.textContent).not.toMatch(/NaN|Infinity|undefined|\[object/);
      expect(container.innerHTML).not.toMatch(/NaN|Infinity/);
      expect(container.textContent).toContain("This is a screening check, not a certification.");
      await waitFor(() =>
        expect(onChange.mock.calls.at(-1)?.[0].lastVerdict).toBe(wantedVerdict(name)),
      );
      if (unit === "in") expect(container.textContent).not.toMatch(/\d mm\b(?!\/)/);
    },
    30_000,
  );

  it("shows each side's checks with the vectors' states", async () => {
    show(demoRecord(name));
    await answered();
    const vector = vectors.find(({ id }) => id === demoRecord(name).id);
    const table = screen.getByRole("table", { name: "The checks, side by side" });
    const told = { ok: "OK", care: "warning", no: "fails", unsure: "not sure" } as const;
    for (const [title, check] of [
      ["Fully compressed before hard contact", "clearance"],
      ["Stop doesn't touch too soon", "earlyContact"],
      ["Stiffness", "stiffness"],
    ] as const) {
      const heading = within(table).getByRole("rowheader", { name: title });
      const row = heading.closest("tbody");
      const cells = [...(row?.querySelectorAll("td strong") ?? [])].map((cell) =>
        (cell.textContent ?? "").replace("Both sides: ", ""),
      );
      const wanted = (vector?.corners ?? []).map((corner) => told[corner[check] as Word]);
      expect(cells).toEqual(cells.length === wanted.length ? wanted : wanted.slice(0, 1));
    }
  }, 30_000);
});

describe("cautions", () => {
  it("stand at what to do as one line that opens, with those of a raised vehicle", async () => {
    show(demoRecord("arm-needs-taller"));
    await answered();
    const panel = screen.getByRole("heading", { level: 1 }).closest("section");
    const line = within(panel as HTMLElement).getByText(/Before you go under the vehicle/);
    expect(line.closest("summary")).toBeTruthy();
    unfold(line);
    expect(screen.getByText(/Never under a vehicle held by a jack alone/)).toBeTruthy();
    expect(screen.getByText(/A raised vehicle handles, brakes and rolls differently/)).toBeTruthy();
  }, 30_000);

  it("are there, folded, where nothing has to be done and nothing is raised", async () => {
    show(demoRecord("arm-fits"));
    await answered();
    expect(screen.getByText(/Never under a vehicle/).closest("details")).toBeTruthy();
    expect(screen.queryByText(/A raised vehicle handles/)).toBeNull();
  }, 30_000);
});

describe("a figure", () => {
  it("opens to its formula with this vehicle's numbers", async () => {
    const { container } = show(demoRecord("arm-fits"));
    await answered();
    unfold(screen.getByText("Travel and height: the math"));
    const figure = await waitFor(() => {
      const found = container.querySelector<HTMLElement>('[data-figure="leverRatio"]');
      if (!found) throw new Error("no figure");
      return found;
    });
    expect(withPlainSpaces(figure.textContent ?? "")).toContain("2.74 : 1");
    unfold(figure);
    await waitFor(() => within(figure).getAllByText("R = (dz/dα)/(ds/dα)"));
    expect(figure.textContent).toContain("411 mm");
    expect(figure.textContent).toContain("2.7421 : 1");
    expect(figure.textContent).toContain("mean of 3 readings");
  }, 30_000);
});

describe("what to re-measure", () => {
  it("leads to that reading", async () => {
    const { go } = show(demoRecord("arm-fits"));
    await answered();
    const button = screen.getByRole("button", { name: /^Left gap/ });
    expect(button.textContent).toMatch(/of the margin of error of the travel to contact, left/);
    fireEvent.click(button);
    expect(go).toHaveBeenCalledWith("left.gap");
  }, 30_000);
});

describe("ride data that are not known", () => {
  it("are named, with a way to the step that asks for them, and nothing is guessed", async () => {
    const { ride: _ride, ...record } = demoRecord("arm-fits");
    const { go, container } = show(record);
    await waitFor(() => screen.getByText("What the answer can't say yet"), patience);
    await answered();
    expect(screen.getByRole("heading", { level: 1 }).textContent).toBe("Not sure yet");
    fireEvent.click(screen.getByRole("button", { name: "Wheel rate" }));
    expect(go).toHaveBeenCalledWith("ride.wheelRateNPerMm");
    expect(container.textContent).toContain("the stop alone is drawn");
    expect(screen.queryByText(/how often the wheel reaches the stop:/)).toBeNull();
    expect(screen.queryByRole("slider", { name: /extra height/ })).toBeNull();
  }, 30_000);
});

describe("a check that is not complete", () => {
  it("lists what is missing, each a way to its step", () => {
    const { stop: _stop, ...record } = demoRecord("arm-fits");
    const stored = storedFromRecord(demoRecord("arm-fits"));
    const { go } = show({ ...stored, record, entries: {} });
    expect(screen.getByRole("heading", { level: 1 }).textContent).toBe("No answer yet");
    const missing = screen.getByRole("button", { name: /The stop is not chosen yet/ });
    fireEvent.click(missing);
    expect(go).toHaveBeenCalledWith("stop.name");
  });
});

it("without the stop's test sheet the answer says what is met when, and takes a similar stop's forces", async () => {
  const whole = storedFromRecord(demoRecord("arm-fits"));
  const { curve: _, usableCompressionMm: __, ...stop } = whole.record.stop ?? {};
  const stored = { ...whole, record: { ...whole.record, stop }, entries: {} };
  const { go, onChange } = show(stored);
  expect(screen.getByRole("heading", { level: 1 }).textContent).toBe("Not sure yet");
  screen.getAllByText(/The stop touches after \d+ mm of wheel travel/);
  screen.getByText("Before you go under the vehicle");
  fireEvent.click(screen.getByRole("button", { name: "Enter the test sheet" }));
  expect(go).toHaveBeenCalledWith("stop.curve");
  fireEvent.click(await screen.findByRole("button", { name: "Use its forces as an estimate" }));
  const [taken] = onChange.mock.lastCall ?? [];
  if (taken === undefined) throw new Error("nothing was taken");
  expect(completeRecord(taken).ok).toBe(true);
  expect(taken.record.stop?.estimated?.how).toContain("no test sheet");
});

describe("readings that cannot be computed with", () => {
  it("are told in a sentence, with the way to the reading to blame", async () => {
    const record = demoRecord("arm-fits");
    const [left, ...rest] = record.corners;
    if (!left) throw new Error("no corner");
    const far: CheckRecord = {
      ...record,
      corners: [{ ...left, gap: { values: [400], tol: 1 } }, ...rest],
    };
    const { go, container } = show(far);
    await waitFor(() => screen.getByRole("button", { name: "To that reading" }), patience);
    expect(container.textContent).not.toMatch(/NaN|Infinity/);
    fireEvent.click(screen.getByRole("button", { name: "To that reading" }));
    expect(go.mock.calls[0]?.[0]).toMatch(/^(left\.|pivotToStop)/);
    expect(screen.getByText(/Never under a vehicle held by a jack alone/)).toBeTruthy();
  }, 30_000);
});

describe("the drawings", () => {
  it.each(["mm", "in"] as const)(
    "have the unit once, not with every number, in %s",
    async (unit) => {
      show(demoRecord("arm-fits"), unit);
      await answered();
      await waitFor(() => screen.getByRole("slider", { name: /extra height/ }), patience);
      const ranges = [...document.querySelectorAll(".rung-range")].map(
        ({ textContent }) => textContent,
      );
      expect(ranges.length).toBeGreaterThan(4);
      for (const range of ranges) expect(range).toMatch(/^(−?[\d.]+ to −?|[\d.]+–)[\d.]+$/);
      const classes = [...document.querySelectorAll("text.axis-number")].map(
        ({ textContent }) => textContent,
      );
      expect(classes).toContain(unit === "in" ? "1428" : "250");
      for (const one of classes) expect(one).toMatch(/^[+−]?[\d.\u202f]+$/);
    },
    30_000,
  );
});

describe("the map of height and stiffness", () => {
  it("tells the figures of the cell gone to, by keys and by the large buttons", async () => {
    show(demoRecord("arm-fits"));
    await answered();
    const map = await waitFor(() => screen.getByRole("slider", { name: /extra height/ }), patience);
    const told = () => withPlainSpaces(map.getAttribute("aria-valuetext") ?? "");
    expect(told()).toMatch(/^extra height 0.0 mm, class 250 N\/mm/);
    await waitFor(() => expect(map.getAttribute("aria-valuetext")).toMatch(/works$/), patience);
    fireEvent.keyDown(map, { key: "ArrowRight" });
    fireEvent.keyDown(map, { key: "ArrowUp" });
    expect(told()).toMatch(/^extra height \+5.0 mm, class 400 N\/mm/);
    fireEvent.click(screen.getByRole("button", { name: "Extra height: more" }));
    fireEvent.click(screen.getByRole("button", { name: "Extra height: more" }));
    await waitFor(() => expect(told()).toMatch(/15.0 mm.*contact too early when loaded/), patience);
  }, 30_000);
});

describe("another stop", () => {
  const tryTheLibrary = () => unfold(screen.getByText("Try the library's stops here, one by one"));
  const worked = async () => {
    await screen.findByText(/^These fit \(/);
    await waitFor(() => expect(screen.queryByText(/stops worked out/)).toBeNull(), {
      timeout: 60_000,
    });
  };

  it("is tried before it can be set against this one, on the same vehicle", async () => {
    show(demoRecord("arm-needs-taller"));
    await answered();
    tryTheLibrary();
    await worked();
    const more = screen.queryByRole("button", { name: "Show them, and what fails" });
    if (more) fireEvent.click(more);
    const name = /^Set against the fitted one ?: Tall progressive$/;
    fireEvent.click(await screen.findByRole("button", { name }));
    await screen.findByText("Tall progressive: the checks");
    expect(screen.getByRole("button", { name }).getAttribute("aria-pressed")).toBe("true");
    expect(screen.getAllByRole("table", { name: "The checks, side by side" })).toHaveLength(2);
    expect(screen.getByText("fitted").closest("section")?.textContent).toContain("It doesn't fit");
    expect(screen.getAllByText("Left: wheel travel up from ride, Tall progressive")).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Close comparison" }));
    await waitFor(() => expect(screen.queryByText("Tall progressive: the checks")).toBeNull());
  }, 90_000);

  it("that can't be mounted there is named apart, and can't be set against it; nor can this one itself", async () => {
    show(demoRecord("arm-fits"));
    await answered();
    tryTheLibrary();
    await worked();
    const more = screen.queryByRole("button", { name: "Show them, and what fails" });
    if (more) fireEvent.click(more);
    screen.getByText(/^Rod stop · /);
    await screen.findByRole("button", { name: /^Set against the fitted one ?: Arm block/ });
    expect(
      screen.queryByRole("button", { name: /^Set against.*: (Tall firm|Rod stop)/ }),
    ).toBeNull();
    const own = screen.getByText("the one of this check").closest("li");
    expect(own?.querySelector("button")).toBeNull();
  }, 90_000);
});

import "fake-indexeddb/auto";
import { act, cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord, TypedReading } from "../../../src/records/check/checkRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { withProof } from "../../../src/records/photo/photoProof.ts";
import type { Decision } from "../../../src/records/review/decision.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { onePixelPhoto } from "../exchange/support.ts";
import { deskWith, type OpenDesk, value } from "./support.tsx";

afterEach(() => {
  cleanup();
  sessionStorage.clear();
  localStorage.clear();
});

// The calculation runs in this thread here.
vi.setConfig({ testTimeout: 60_000 });
const long = { timeout: 40_000 };
const fits = demoRecord("arm-fits");
const platform = demoPack.platforms.find(({ layout }) => layout.kind === "arm");

/** A slip of the unit, repeats that scatter, left and right apart, a ratio and a platform contradicted. */
function oddRecord(): CheckRecord {
  if (fits.layout.kind !== "arm" || !platform) throw new Error("the demo check is on an arm");
  const [left, right] = fits.corners;
  if (!left || !right) throw new Error("two corners are needed");
  const reading = (...values: number[]): TypedReading => ({ values, tol: 1 });
  return {
    ...fits,
    vehicle: { ...fits.vehicle, platformId: platform.id },
    layout: { ...fits.layout, readings: { ...fits.layout.readings, pivotToStop: reading(40) } },
    corners: [
      { ...left, gap: reading(22 / 25.4), rideHeight: reading(540, 548) },
      { ...right, gap: reading(22), rideHeight: reading(510) },
    ],
    photos: [
      { ...onePixelPhoto, reading: "left.gap", caption: "Tape at the pad" },
      { ...onePixelPhoto, reading: "right.limits.0" },
    ],
  };
}

async function openCheck(desk: OpenDesk, index = 0): Promise<void> {
  desk.show({ place: "check", key: desk.keys[index] ?? "" });
  await screen.findByText(/ is computed\.$/, {}, long);
}

function decideBox() {
  return within(document.querySelector<HTMLElement>(".desk-decide") ?? document.body);
}

async function type(label: string | RegExp, text: string): Promise<void> {
  await act(async () => {
    fireEvent.input(decideBox().getByLabelText(label), { target: { value: text } });
  });
}

async function tap(name: string): Promise<void> {
  await act(async () => {
    const buttons = decideBox().getAllByRole("button", { name });
    fireEvent.click(buttons.at(-1) as HTMLElement);
  });
}

async function choose(name: "Accept" | "Ask again" | "Other part"): Promise<void> {
  await act(async () => {
    fireEvent.click(decideBox().getByRole("radio", { name }));
  });
}

const reply = () => decideBox().getByLabelText<HTMLTextAreaElement>(/^Reply \(in /);

describe("who says so", () => {
  it("stands beside each reading and each photo; a photo that was changed is pointed out", async () => {
    const photo = await withProof(onePixelPhoto, "Ada", new Date("2026-05-03T10:00:00Z"));
    const [left, right] = fits.corners;
    if (!left?.rideHeight || !left.gap || !right) throw new Error("the demo check has both");
    const gap: TypedReading = { ...left.gap, by: "Bo" };
    const rideHeight: TypedReading = { ...left.rideHeight, source: "pack" };
    const desk = await deskWith({
      ...fits,
      corners: [{ ...left, gap, rideHeight }, right],
      second: { by: "Cleo", at: "2026-05-02T12:00:00Z", readings: { "left.gap": gap } },
      fitted: {
        partNumber: "HL-1052",
        batch: "2611",
        spacerMm: 10,
        at: "2026-05-04T12:00:00Z",
        by: "Ada",
      },
      photos: [photo, { ...photo, caption: "Other", sha256: "0".repeat(64) }],
    });
    desk.show({ place: "check", key: desk.keys[0] ?? "" });
    const table = await screen.findByRole("table", { name: /who took them/ }, long);
    within(table).getByText("Measured by Bo");
    within(table).getByText("From the library");
    screen.getByText(/A second person, Cleo, measured without seeing them on May 2, 2026/);
    screen.getByText(/HL-1052, batch 2611, spacer 10\smm, by Ada on May 4, 2026/);
    const proofs = () =>
      [...document.querySelectorAll(".desk-proof")].map((each) => each.textContent);
    await waitFor(() => expect(proofs()[0]).toMatch(/May 3, 2026.*Ada · unchanged since/));
    await waitFor(() =>
      expect(proofs()[1]).toMatch(/May 3, 2026.*Ada.*Not the picture that was taken then/),
    );
  });
});

describe("a check at the desk", () => {
  it("points out all five kinds of odd readings, and shows the photos by the names of their readings", async () => {
    const desk = await deskWith(oddRecord());
    desk.show({ place: "check", key: desk.keys[0] ?? "" });
    // The readings are too odd for an answer; what is odd about them is told all the same.
    await screen.findByText("Ask to re-measure it", {}, long);
    const kinds = [...document.querySelectorAll("[data-odd]")].map((each) =>
      each.getAttribute("data-odd"),
    );
    for (const kind of ["unitSlip", "scatter", "leftRight", "ratio", "reference"]) {
      expect(kinds).toContain(kind);
    }
    const photos = [...document.querySelectorAll(".desk-photos figure")];
    expect(photos).toHaveLength(2);
    expect(photos[0]?.textContent).toMatch(/Tape at the pad.*left gap/);
    expect(photos[1]?.textContent).toMatch(/^Right/);
    const [first] = document.querySelectorAll<HTMLImageElement>(".desk-photos img");
    expect(first?.getAttribute("src")).toBe(`data:image/png;base64,${onePixelPhoto.data}`);
  });

  it("shows what changed since the version before, and leads from the old one to the new", async () => {
    const changed = { ...fits, notes: "Taken again" };
    const desk = await deskWith(fits, changed);
    await openCheck(desk, 1);
    screen.getByRole("heading", { name: "Changed since the version before" });
    cleanup();
    await openCheck(desk, 0);
    const link = screen.getByRole("link", { name: "Open the newest" });
    expect(link.getAttribute("href")).toContain(encodeURIComponent(desk.keys[1] ?? ""));
  });
});

describe("deciding", () => {
  it("asks for the readings chosen, with a name, and can be taken back with all its words", async () => {
    const desk = await deskWith(fits);
    await openCheck(desk);
    await choose("Ask again");
    expect(decideBox().queryByLabelText(/^Reply/)).toBeNull();
    await act(async () => {
      fireEvent.click(decideBox().getByRole("checkbox", { name: "Left gap" }));
    });
    const button = () =>
      decideBox().getAllByRole<HTMLButtonElement>("button", { name: "Ask again" });
    expect(button().at(-1)?.disabled).toBe(true);
    await type("Your name", "M. Lind");
    await type("Note, also in the reply", "Wheels straight, please.");
    expect(reply().value).toContain("Wheels straight, please.");
    await tap("Ask again");
    await waitFor(() => screen.getByText("Asked for readings again"), long);
    const [kept] = value(await desk.store.decisions());
    expect(kept).toMatchObject({
      kind: "askAgain",
      by: "M. Lind",
      readings: ["left.gap"],
      submission: desk.keys[0],
    });
    await tap("Take the decision back");
    await waitFor(() => expect(reply().value).toContain("Wheels straight, please."), long);
    expect(decideBox().getByRole<HTMLInputElement>("checkbox", { name: "Left gap" }).checked).toBe(
      true,
    );
    const decisions = value(await desk.store.decisions());
    expect(decisions.map(({ kind }) => kind).sort()).toEqual(["askAgain", "undo"]);
  });

  it("keeps a half-written reply while another tab decides, and while one looks elsewhere", async () => {
    const desk = await deskWith(fits);
    await openCheck(desk);
    await choose("Accept");
    await type("Your name", "M. Lind");
    await type(/^Reply \(in/, "My own careful words.");
    cleanup();
    await openCheck(desk);
    expect(reply().value).toBe("My own careful words.");

    const other: Decision = {
      key: "from the other tab",
      checkId: fits.id,
      submission: desk.keys[0] ?? "",
      kind: "accept",
      by: "A. Sato",
      at: new Date().toISOString(),
      note: "",
      reply: "Fine.",
    };
    await desk.store.decide([other]);
    await screen.findByText(/It was decided in another tab while you were writing/, {}, long);
    decideBox().getByText("My own careful words.");
    decideBox().getByText("Fine.");
  });

  it("words changed by hand stay with their decision when another is looked at", async () => {
    await openCheck(await deskWith(fits));
    await choose("Accept");
    await type(/^Reply \(in/, "Words for accepting.");
    await choose("Ask again");
    await choose("Accept");
    expect(reply().value).toBe("Words for accepting.");
    await tap("Rewrite it");
    expect(reply().value).toContain("The readings: accepted as you sent them.");
  });
});

describe("one key each", () => {
  const press = (key: string, more: KeyboardEventInit = {}) =>
    act(async () => {
      fireEvent.keyDown(document.body, { key, ...more });
    });

  it("nothing is chosen for a person where the check does not fit", async () => {
    const misfit = demoRecord("arm-needs-taller");
    await openCheck(await deskWith(misfit));
    const chosen = () =>
      [...document.querySelectorAll<HTMLInputElement>(".desk-decide .segmented input")].filter(
        ({ checked }) => checked,
      );
    expect(chosen()).toHaveLength(0);
    decideBox().getByText("It does not fit: choose what is to be done.");
    await press("p");
    expect(chosen()).toHaveLength(1);
    await press("r");
    decideBox().getByText("Readings to re-measure");
  });
});

it("shows the job of a check, whose it is, and its other checks, a tap away", async () => {
  const job = { id: "j1", label: "Osprey wagon", number: "2214", customer: "I. Farrow" };
  const other = demoRecord("axle-towing-early");
  const desk = await deskWith(
    { ...fits, job: { ...job, moment: "before" } },
    { ...other, job },
    demoRecord("damper-shaft"),
  );
  await openCheck(desk);
  const nav = within(await screen.findByRole("navigation", { name: "Checks of this job" }));
  nav.getByText("Osprey wagon, job 2214, I. Farrow");
  const links = await nav.findAllByRole("link", {}, long);
  expect(links.map((link) => link.getAttribute("href"))).toEqual([
    `#/desk/check/${desk.keys[1]?.replace(" ", "%20")}`,
  ]);
  expect(links[0]?.textContent).toContain("Rear axle");
});

describe("the report", () => {
  const inMm = /\d[ \u00a0\u202f]mm\b(?!\/)/;
  const inInches = /\d[ \u00a0\u202f]in\b/;

  it("is a page for the customer in one unit, and an appendix with drawings, formulas and photos", async () => {
    const desk = await deskWith({ ...demoRecord("arm-needs-taller"), photos: [onePixelPhoto] });
    desk.show({ place: "report", key: desk.keys[0] ?? "" });
    await screen.findByRole("heading", { name: /^Formulas/ }, long);
    const report = document.querySelector(".report")?.textContent ?? "";
    expect(report).not.toMatch(/NaN|Infinity|undefined/);
    const page = () => document.querySelector(".card-page")?.textContent ?? "";
    await waitFor(() => expect(page()).toContain("What to do"), long);
    expect(page()).toMatch(inMm);
    expect(page()).not.toMatch(inInches);
    expect(page()).toContain("Never under a vehicle held by a jack alone.");
    expect(page()).toContain("This is a screening check, not a certification.");
    expect(page()).toMatch(/\d[ \u00a0\u202f]mm, measured/);
    expect(document.querySelectorAll(".card-page .travel-still")).toHaveLength(1);
    expect(document.querySelectorAll(".card-photos img")).toHaveLength(1);
    expect(document.querySelectorAll(".report .chart svg").length).toBeGreaterThan(2);
    expect(document.querySelectorAll(".report .worked").length).toBeGreaterThan(5);
    expect(document.querySelectorAll(".report .desk-photos img")).toHaveLength(1);
    fireEvent.click(screen.getByRole("button", { name: "In inches" }));
    await waitFor(() => expect(page()).toMatch(inInches));
    expect(page()).not.toMatch(inMm);
    fireEvent.click(screen.getByRole("button", { name: "With the appendix" }));
    await waitFor(() => expect(screen.queryByRole("heading", { name: /^Formulas/ })).toBeNull());
  });
});

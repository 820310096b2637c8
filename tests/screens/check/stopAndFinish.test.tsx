import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { withChoice } from "../../../src/records/filling/choice.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { pastedCells } from "../../../src/screens/check/stop/pastedTable.ts";
import { standingSteps } from "../../../src/screens/guide/standing.ts";
import { changePreferences } from "../../../src/screens/preferences.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { choose, freshPhone, heading, keep, kept, startApp, tap, type } from "../startApp.tsx";

const demo = (): StoredCheck => storedFromRecord(demoRecord("arm-fits"));

beforeEach(freshPhone);

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const stopOf = async (id: string) => (await kept(id)).record.stop;

describe("the stop", () => {
  it("of the pack comes with its number and unit, never with a colour or letter", async () => {
    const stored = newStoredCheck("Tern");
    await keep(stored);
    startApp(`#/check/${stored.id}/stop`);
    await choose(/In the parts library/);
    const option = await screen.findByRole("radio", { name: /^Tall progressive/ });
    expect(withPlainSpaces(option.closest("label")?.textContent ?? "")).toMatch(
      /60\.0 mm high.*class 250 N\/mm.*tested slowly only/,
    );
    fireEvent.click(option);
    await waitFor(async () => expect((await stopOf(stored.id))?.usableCompressionMm).toBe(33));
    const { id: _, ...stop } = { id: 0, ...(await stopOf(stored.id)) };
    const { freeHeight, ...figures } = demoRecord("arm-fits").stop;
    expect(stop).toEqual({
      ...figures,
      freeHeight: { ...freeHeight, source: "pack" },
      partNumber: "HL-1060",
    });
    await type("Part number", "hl-1052");
    await tap("Find the part");
    await waitFor(async () => expect((await stopOf(stored.id))?.partNumber).toBe("HL-1052"));
    expect(await stopOf(stored.id)).toMatchObject({ name: "Arm block", revision: "B" });
    await type("Part number", "HL-77");
    await tap("Find the part");
    expect(await screen.findByText(/The part “HL-77” is not in the parts library/)).toBeTruthy();
    expect((await stopOf(stored.id))?.partNumber).toBe("HL-1052");
  });

  it("typed by hand waits while a stop of the pack is looked at", async () => {
    const stored = newStoredCheck("Tern");
    await keep(stored);
    startApp(`#/check/${stored.id}/stop`);
    await choose(/I'll type them/);
    await type("Name of the stop", "Cone 80");
    await choose("Supports load");
    await tap("Next");
    await heading("Height of the stop");
    await type("Free height of the stop", "8o");
    await type("Usable compression", "44");
    await tap("Back");
    await choose(/In the parts library/);
    await choose(/^Tall progressive/);
    await choose(/I'll type them/);
    expect(((await screen.findByLabelText("Name of the stop")) as HTMLInputElement).value).toBe(
      "Cone 80",
    );
    await waitFor(async () => {
      const { record, entries } = await kept(stored.id);
      expect(record.stop).toEqual({ name: "Cone 80", duty: "carry", usableCompressionMm: 44 });
      expect(entries["stop.freeHeight"]?.texts).toEqual(["8o"]);
    });
  });

  it("has a curve that rows are added to, taken from and pasted into", async () => {
    const stored = demo();
    await keep(stored);
    startApp(`#/check/${stored.id}/stop`);
    await choose(/I'll type them/);
    location.hash = `#/check/${stored.id}/stop.curve`;
    await heading("Force over compression");
    await tap("Remove row 8");
    await waitFor(async () => expect((await stopOf(stored.id))?.curve).toHaveLength(7));
    await tap("Add a row");
    await type("Row 8, pressed by", "33");
    await type("Row 8, force", "24000");
    await waitFor(async () =>
      expect((await stopOf(stored.id))?.curve?.at(-1)).toEqual([33, 24000]),
    );
    await screen.findByText(/stiffness class 250 N\/\u2060mm/);
    await type("Row 8, force", "100");
    await screen.findByText(/the force of point 8 is not above the point before it/);
    expect(screen.getByLabelText("Row 8, force").getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByRole("button", { name: "Continue, fix later" })).toBeTruthy();
  });

  it("has a curve that begins in the person's own units", async () => {
    changePreferences({ length: "in" });
    const stored = newStoredCheck("Tern");
    await keep(stored);
    startApp(`#/check/${stored.id}/stop`);
    await choose(/I'll type them/);
    location.hash = `#/check/${stored.id}/stop.curve`;
    await heading("Force over compression");
    expect((screen.getByRole("radio", { name: "in and lbf" }) as HTMLInputElement).checked).toBe(
      true,
    );
    await type("Row 1, pressed by", "0.5");
    await type("Row 1, force", "100");
    await type("Row 2, pressed by", "1");
    await type("Row 2, force", "300");
    // 1 lbf = 4.4482216152605 N (NIST SP 811, Appendix B.8).
    await waitFor(async () =>
      expect((await stopOf(stored.id))?.curve).toEqual([
        [12.7, expect.closeTo(444.822, 3)],
        [25.4, expect.closeTo(1334.466, 3)],
      ]),
    );
  });

  it("gets no damping without tests at speed", async () => {
    const stored = storedFromRecord(demoRecord("damper-shaft"));
    await keep(stored);
    startApp(`#/check/${stored.id}/stop.damping`);
    await heading("Force over compression");
    const table = stored.record.stop?.damping;
    expect(table?.length).toBeGreaterThan(0);
    await choose(/Only pressed slowly/);
    await waitFor(async () =>
      expect(await stopOf(stored.id)).toMatchObject({ testedAtSpeed: false, damping: null }),
    );
    await choose(/At several speeds/);
    await waitFor(async () =>
      expect(await stopOf(stored.id)).toMatchObject({ testedAtSpeed: true, damping: table }),
    );
  });
});

describe("a pasted table", () => {
  it.each([
    ["tabs and a heading", "mm\tN\n4.1\t750\n8,2\t1570", ["4.1", "750", "8,2", "1570"]],
    ["semicolons and decimal commas", "4,1;750\n8,2;1570\n", ["4,1", "750", "8,2", "1570"]],
    ["commas between", "4.1,750\r\n8.2,1570", ["4.1", "750", "8.2", "1570"]],
    ["spaces", "4.1 750\n8.2   1570", ["4.1", "750", "8.2", "1570"]],
  ])("is read with %s", (_, text, cells) => {
    expect(pastedCells(text, 2)).toEqual(cells);
  });

  it("is left alone where it is one number, or too narrow", () => {
    expect(pastedCells("4.1", 2)).toBeNull();
    expect(pastedCells("4,1", 2)).toEqual(["4", "1"]);
    expect(pastedCells("1;2\n3;4", 3)).toBeNull();
  });
});

describe("the demands", () => {
  const rulesOf = async (id: string) => (await kept(id)).record.rules;

  it("go into the record only where they are changed, and back to the usual ones", async () => {
    const stored = demo();
    await keep(stored);
    startApp(`#/check/${stored.id}/rules`);
    await heading("Requirements");
    expect(await rulesOf(stored.id)).toBeUndefined();
    await type("Contacts allowed", "5");
    await waitFor(async () =>
      expect(await rulesOf(stored.id)).toEqual({ allowedContactsPerKm: 5 }),
    );
    const obstacle = within(
      screen.getByRole("heading", { name: "Obstacle" }).closest("section") as HTMLElement,
    );
    fireEvent.input(obstacle.getByLabelText("Height"), { target: { value: "120" } });
    await waitFor(async () =>
      expect((await rulesOf(stored.id))?.events).toEqual([
        { kind: "obstacle", heightM: 0.12, lengthM: 2, speedKmPerH: 40 },
        { kind: "landing", heightM: 0.1 },
      ]),
    );
    await tap("Reset to typical");
    await waitFor(async () => expect(await rulesOf(stored.id)).toBeUndefined());
    expect((screen.getByLabelText("Contacts allowed") as HTMLInputElement).value).toBe("");
  });

  it("are asked in miles of a person who works in inches", async () => {
    changePreferences({ length: "in" });
    const stored = demo();
    await keep(stored);
    startApp(`#/check/${stored.id}/rules`);
    await heading("Requirements");
    screen.getByText("Usual: 37 mph");
    screen.getByText("Usual: 3.2 per mile; ten times that for a progressive stop");
    await type("Contacts allowed", "5");
    fireEvent.input(screen.getAllByLabelText("Speed")[0] as HTMLElement, {
      target: { value: "25" },
    });
    // A mile is 1.609344 km (NIST SP 811, Appendix B.8).
    await waitFor(async () =>
      expect(await rulesOf(stored.id)).toEqual({
        allowedContactsPerKm: expect.closeTo(3.10685596, 7),
        speedKmPerH: expect.closeTo(40.2336, 9),
      }),
    );
  });

  it("leave an event out and take it in again", async () => {
    const stored = demo();
    await keep(stored);
    startApp(`#/check/${stored.id}/rules`);
    await heading("Requirements");
    const landing = within(
      screen.getByRole("heading", { name: "Landing" }).closest("section") as HTMLElement,
    );
    fireEvent.click(landing.getByRole("checkbox"));
    await waitFor(async () =>
      expect((await rulesOf(stored.id))?.events?.map(({ kind }) => kind)).toEqual(["obstacle"]),
    );
    fireEvent.click(landing.getByRole("checkbox"));
    await waitFor(async () => expect(await rulesOf(stored.id)).toBeUndefined());
  });

  it("of a file can be changed like typed ones", async () => {
    const record = {
      ...demoRecord("arm-fits"),
      rules: { events: [{ kind: "landing" as const, heightM: 0.3 }] },
    };
    const stored = storedFromRecord(record);
    await keep(stored);
    startApp(`#/check/${stored.id}/rules`);
    await heading("Requirements");
    const landing = within(
      screen.getByRole("heading", { name: "Landing" }).closest("section") as HTMLElement,
    );
    await waitFor(() =>
      expect((landing.getByLabelText("Height") as HTMLInputElement).value).toBe("300"),
    );
    expect(await rulesOf(stored.id)).toEqual(record.rules);
    fireEvent.input(landing.getByLabelText("Height"), { target: { value: "200" } });
    await waitFor(async () =>
      expect((await rulesOf(stored.id))?.events).toEqual([{ kind: "landing", heightM: 0.2 }]),
    );
  });
});

describe("the last step", () => {
  it("lists what is missing with the way there, and only that", async () => {
    const stored = demo();
    const { "left.gap": _, ...entries } = stored.entries;
    const [left, ...others] = stored.record.corners;
    if (!left) throw new Error("the demo has a left side");
    const { gap: _gap, ...withoutGap } = left;
    await keep({
      ...stored,
      entries,
      record: { ...stored.record, corners: [withoutGap, ...others] },
    });
    startApp(`#/check/${stored.id}/finish`);
    await heading("Finish");
    await screen.findByText("One thing is missing");
    const link = screen.getByRole("link", { name: "Go there: Gap" });
    expect(link.getAttribute("href")).toBe(`#/check/${stored.id}/left.gap`);
    const answer = screen.getByRole("button", { name: "Not complete yet" }) as HTMLButtonElement;
    expect(answer.disabled).toBe(true);
  });

  it("leads to the answer of a complete check, whose cautions it still asks for", async () => {
    const stored = demo();
    expect(completeRecord(stored).ok).toBe(true);
    await keep(stored);
    startApp(`#/check/${stored.id}/finish`);
    await screen.findByText("The answer has everything it needs.");
    screen.getByText(/cautions for this vehicle are not acknowledged/);
    await tap("Show the answer");
    await waitFor(() => expect(location.hash).toBe(`#/check/${stored.id}/answer`));
  });

  it("keeps notes", async () => {
    const stored = demo();
    await keep(stored);
    startApp(`#/check/${stored.id}/finish`);
    await type("Notes", "Bush worn on the left.");
    await waitFor(async () =>
      expect((await kept(stored.id)).record.notes).toBe("Bush worn on the left."),
    );
  });
});

describe("a change of a reading", () => {
  it("takes the verdict of the readings before away", async () => {
    const stored: StoredCheck = {
      ...demo(),
      lastVerdict: "ok",
      progress: { ...demo().progress, cautionsFor: "level" },
    };
    await keep(stored);
    startApp(`#/check/${stored.id}/left.gap`);
    await heading("Left: Gap");
    expect((await kept(stored.id)).lastVerdict).toBe("ok");
    await type("Left gap, time 1", "30");
    await waitFor(async () => expect((await kept(stored.id)).lastVerdict).toBeUndefined());
  });

  it("of how the vehicle stands leaves it", async () => {
    const stored: StoredCheck = {
      ...demo(),
      lastVerdict: "ok",
      progress: { ...demo().progress, cautionsFor: "level" },
    };
    await keep(stored);
    startApp(`#/check/${stored.id}/standing`);
    await tap("It stands like this");
    await waitFor(async () =>
      expect((await kept(stored.id)).progress.stood).toEqual(standingSteps.map(({ id }) => id)),
    );
    expect((await kept(stored.id)).lastVerdict).toBe("ok");
  });
});

it("a check that lacks its stop's test sheet alone goes on to an answer by its main button", async () => {
  const whole = demo();
  const { curve: _, usableCompressionMm: __, ...stop } = whole.record.stop ?? {};
  const stored = { ...whole, record: { ...whole.record, stop }, entries: {} };
  await keep(stored);
  startApp(`#/check/${stored.id}/finish`);
  await screen.findByText(/No test sheet\?/);
  await tap("Answer without test sheet");
  await screen.findAllByText(/The stop touches after \d+ mm of wheel travel/);
  expect(location.hash).toBe(`#/check/${stored.id}/answer`);
});

it("without its test sheet a plain block's forces come from its hardness and size, as an estimate", async () => {
  const whole = demo();
  const { curve: _, usableCompressionMm: __, ...stop } = whole.record.stop ?? {};
  const bare = { ...whole, record: { ...whole.record, stop }, entries: {} };
  const stored = withChoice(bare, "stop.source", "hand");
  await keep(stored);
  startApp(`#/check/${stored.id}/stop.curve`);
  fireEvent.click(await screen.findByText("A plain block of solid rubber? Estimate it"));
  const value = (legend: string) =>
    within(screen.getByRole("group", { name: legend })).getByRole("textbox", { name: "Value" });
  fireEvent.input(value("Hardness"), { target: { value: "60" } });
  fireEvent.input(value("Diameter of the block"), { target: { value: "60" } });
  await tap("Take this estimate");
  await waitFor(async () =>
    expect((await stopOf(stored.id))?.estimated?.forceShare).toBeGreaterThanOrEqual(0.25),
  );
  expect((await stopOf(stored.id))?.freeHeight).toEqual(stop.freeHeight);
  // Once there is a curve, nothing is estimated any more.
  await waitFor(() => expect(screen.queryByText(/A plain block of solid rubber/)).toBeNull());
});

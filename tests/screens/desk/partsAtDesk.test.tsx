import "fake-indexeddb/auto";
import { act, cleanup, fireEvent, screen, within } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import type { Advice, CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { newId } from "../../../src/records/check/storedCheck.ts";
import * as saving from "../../../src/sharing/saveFile.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { deskWith, value } from "./support.tsx";

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
  localStorage.clear();
  sessionStorage.clear();
});
vi.setConfig({ testTimeout: 60_000 });

const fits = demoRecord("arm-fits");
const advice: Advice = {
  at: "2026-05-20T12:00:00.000Z",
  sides: ["left", "right"],
  pack: "Halden Lane parts",
  edition: "2026-11",
  part: {
    name: "Arm block",
    partNumber: "HL-1052",
    revision: "B",
    spacerMm: 10,
    heightMm: 52,
    stopRateClass: 160,
    change: "both",
    verdict: "ok",
  },
};

function check(label: string, change: Partial<CheckRecord>): CheckRecord {
  return { ...fits, id: newId(), vehicle: { ...fits.vehicle, label }, ...change };
}

async function look(typed: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, text] of Object.entries(typed)) {
    await act(async () => {
      fireEvent.input(screen.getByLabelText(label), { target: { value: text } });
    });
  }
  fireEvent.click(screen.getByRole("button", { name: "Look through all checks" }));
}

it("lists what the app advised and what the desk advised apart, on screen, in the table and in the letter", async () => {
  const fitted = { partNumber: "HL-1052", spacerMm: 0, at: "2026-05-31T12:00:00Z", by: "Ada" };
  const records = [
    check("Tern van 1", { advised: [advice] }),
    check("Tern van 2", { advised: [advice], fitted: { ...fitted, revision: "B" } }),
    check("Tern van 3", {}),
    check("Tern van 4", {}),
  ];
  const desk = await deskWith(...records);
  const [, , byDesk] = records;
  value(
    await desk.store.decide([
      {
        key: "d",
        checkId: byDesk?.id ?? "",
        submission: desk.keys[2] ?? "",
        kind: "otherPart",
        by: "Dee",
        at: "2026-06-02T09:00:00Z",
        note: "",
        stop: "Arm block",
        part: { partNumber: "HL-1052", revision: "B" },
      },
    ]),
  );
  desk.show({ place: "parts" });
  await screen.findByRole("heading", { name: "Where a part went", level: 1 });
  const ready = () => screen.getByRole("button", { name: "Look through all checks" });
  await act(async () => {
    fireEvent.input(screen.getByLabelText("Part number"), { target: { value: "hl-1052" } });
  });
  await vi.waitFor(() => expect((ready() as HTMLButtonElement).disabled).toBe(false));
  await look({});
  const table = await screen.findByRole("table", { name: /HL-1052/ });
  const rows = within(table).getAllByRole("row").slice(1);
  const row = (label: string) => rows.find((each) => each.textContent?.includes(label));
  expect(rows).toHaveLength(3);
  expect(row("Tern van 1")?.textContent).toMatch(
    /By the app, May 20, 2026: Arm block, HL-1052, revision B, spacer 10\smm/,
  );
  expect(row("Tern van 1")?.textContent).toContain("not told");
  expect(row("Tern van 2")?.textContent).toContain("no, another spacer than the app advised");
  expect(row("Tern van 3")?.textContent).toMatch(/By Dee, Jun 2, 2026: Arm block/);
  screen.getByText(/Advised by the app in 2, by the review desk in 1/);
  const letters = [...document.querySelectorAll(".letter")].map((each) => each.textContent);
  expect(letters.find((text) => text?.includes("Tern van 1"))).toMatch(
    /By what you sent us, the app advised this part for your vehicle on May 20, 2026/,
  );
  expect(letters.find((text) => text?.includes("Tern van 2"))).toMatch(
    /You told us that this part was fitted on May 31, 2026/,
  );
  expect(letters.find((text) => text?.includes("Tern van 3"))).toMatch(
    /We advised this part for your vehicle on Jun 2, 2026/,
  );
  const saved = vi.spyOn(saving, "saveFile").mockImplementation(async () => true);
  fireEvent.click(screen.getByRole("button", { name: "Save a table (CSV)" }));
  expect(saved).toHaveBeenCalledOnce();
  await look({ "Only this batch": "2611" });
  await screen.findByText(/did not tell which revision or batch/);
  expect(screen.queryByRole("table")).toBeNull();
});

it("the desk shows what the app said as what it said, beside what is computed here", async () => {
  const desk = await deskWith(check("Tern van 1", { advised: [advice] }));
  desk.show({ place: "check", key: desk.keys[0] ?? "" });
  const heading = await screen.findByRole(
    "heading",
    { name: "What the app prescribed on the phone" },
    { timeout: 40_000 },
  );
  const card = within(heading.closest("section") as HTMLElement);
  card.getByText(/Arm block, HL-1052, revision B, spacer 10\smm/);
  card.getByText(/Nobody has checked it/);
  await card.findByText(/^Computed here with this parts library:/, {}, { timeout: 40_000 });
});

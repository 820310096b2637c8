import { readFileSync } from "node:fs";
import { cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import { readCheckText } from "../../../src/records/check/readCheck.ts";
import type { StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { withPlainSpaces } from "../../../src/saying/quantityText.ts";
import AnswerScreen from "../../../src/screens/answer/AnswerScreen.tsx";
import { startDeskAssessor } from "./dispatcherAssessor.ts";

afterEach(cleanup);

function demo(path: string): StoredCheck {
  const read = readCheckText(readFileSync(`demo-data/${path}.json`, "utf8"), path);
  if (!read.ok) throw new Error(read.fault.code);
  return storedFromRecord(read.value);
}

const before = demo("checks/stop-missing");
const after = demo("jobs/osprey-rear-after");
const front = demo("checks/stop-on-the-arm-missing");
const patience = { timeout: 15_000 };

function show(stored: StoredCheck, others: readonly StoredCheck[]) {
  const onOtherAxle = vi.fn(async () => null);
  render(
    <AnswerScreen
      stored={stored}
      unit="mm"
      go={() => undefined}
      onChange={() => undefined}
      startAssessor={startDeskAssessor}
      job={{ others, onOtherAxle }}
    />,
  );
  return onOtherAxle;
}

it("stands beside the check before the change, each with its own verdict and figures", async () => {
  show(after, [before, front]);
  await screen.findByRole("heading", { name: "Osprey wagon, job 2214, I. Farrow" }, patience);
  const table = await screen.findByRole("table", { name: "Left: before and after" }, patience);
  const stand = within(table).getByRole("row", { name: /^Stop to pad/ });
  expect(withPlainSpaces(stand.textContent ?? "")).toBe(
    "Stop to padno stop, 103.0 mm to the padgap 16.5 mm",
  );
  const travel = within(table).getByRole("row", { name: /^Wheel travel to contact/ });
  const [wasMm, isMm] = within(travel)
    .getAllByRole("cell")
    .map(({ textContent }) => Number.parseFloat(textContent ?? ""));
  // tests/vectors/examples.json: record 9, left.
  expect(wasMm).toBeCloseTo(94.9, 1);
  expect(isMm).toBeLessThan(wasMm ?? 0);
  for (const name of ["Before", "After"]) {
    const [card] = screen.getAllByText(name).map((each) => each.closest(".compared-one"));
    expect(card?.querySelector(".check-state")?.textContent).toBeTruthy();
  }
  expect(document.body.textContent).not.toMatch(/NaN|Infinity|undefined/);
});

it("leads to the other checks of the job, and offers no axle that is there already", async () => {
  show(after, [before, front]);
  await screen.findByRole("heading", { name: /^Osprey wagon, job 2214/ }, patience);
  const links = [...document.querySelectorAll<HTMLAnchorElement>(".job-others a")];
  expect(links.map((link) => link.getAttribute("href"))).toEqual([
    `#/check/${before.id}`,
    `#/check/${front.id}`,
  ]);
  expect(links[0]?.textContent).toContain("Rear axle, before the change");
  expect(screen.queryByRole("button", { name: "Check the other axle" })).toBeNull();
});

it("begins the other axle where the job has none", async () => {
  const onOtherAxle = show(after, [before]);
  fireEvent.click(await screen.findByRole("button", { name: "Check the other axle" }, patience));
  await waitFor(() => expect(onOtherAxle).toHaveBeenCalledTimes(1));
});

it("says that a check after the change has no answer yet", async () => {
  const { corners } = after.record;
  const open = {
    ...after,
    record: { ...after.record, corners: corners.map(({ gap: _, ...corner }) => corner) },
  };
  show(before, [open, front]);
  const link = await screen.findByRole("link", { name: "Go on with it" }, patience);
  expect(link.getAttribute("href")).toBe(`#/check/${after.id}`);
});

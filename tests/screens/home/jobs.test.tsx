import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import type { Job } from "../../../src/records/check/checkRecord.ts";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { withJob } from "../../../src/records/filling/job.ts";
import { CheckPlace } from "../../../src/screens/openCheck/openCheckScreen.ts";
import { freshPhone, heading, keep, kept, openStore, startApp, tap, type } from "../startApp.tsx";

// On a busy machine its modules alone can take longer than a test waits for a screen.
beforeAll(() => CheckPlace.preload(), 180_000);

beforeEach(freshPhone);

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const names = () => [...document.querySelectorAll(".check-name")].map((each) => each.textContent);
const job: Job = { id: "j1", label: "Brant pickup", number: "4107" };

function check(name: string, axle: "front" | "rear", inJob?: Job): StoredCheck {
  const stored = changeRecord(newStoredCheck(name), (record) => ({
    ...record,
    axle,
    vehicle: { ...record.vehicle, label: name },
  }));
  return inJob ? withJob(stored, inJob) : stored;
}

async function save(change: (dialog: ReturnType<typeof within>) => void): Promise<void> {
  const dialog = within(await screen.findByRole("dialog"));
  await dialog.findByLabelText("Customer");
  change(dialog);
  fireEvent.click(dialog.getByRole("button", { name: "Save" }));
  await waitFor(() => expect(screen.queryByRole("dialog")).toBeNull());
}

it("puts a check into a job with number and customer, and another into the same", async () => {
  const [front, rear] = [check("Brant, front", "front"), check("Brant, rear", "rear")];
  await keep(front, rear);
  startApp();
  await tap("More for Brant, front");
  await tap("Job");
  await save((dialog) => {
    fireEvent.input(dialog.getByLabelText("Job number"), { target: { value: "4107" } });
    fireEvent.input(dialog.getByLabelText("Customer"), { target: { value: "I. Farrow" } });
  });
  await screen.findByRole("heading", { level: 2, name: /Brant, front.*Job 4107 · I. Farrow/ });
  await tap("More for Brant, rear");
  await tap("Job");
  const { job: first } = (await kept(front.id)).record;
  await save((dialog) => {
    fireEvent.change(dialog.getByLabelText("This check belongs to"), {
      target: { value: first?.id },
    });
    fireEvent.input(dialog.getByLabelText("Customer"), { target: { value: "J. Farrow" } });
    fireEvent.click(dialog.getByLabelText("After"));
  });
  await waitFor(() => expect(document.querySelectorAll(".check-job")).toHaveLength(1));
  expect((await kept(front.id)).record.job).toEqual({ ...first, customer: "J. Farrow" });
  expect((await kept(rear.id)).record.job).toEqual({
    ...first,
    customer: "J. Farrow",
    moment: "after",
  });
  await screen.findByText(/^Rear axle, after · No answer yet/);
});

it("a number typed at the vehicle is in the job's other checks once the step is left", async () => {
  const [front, rear] = [check("Brant, front", "front", job), check("Brant, rear", "rear", job)];
  await keep(front, rear);
  startApp(`#/check/${front.id}/vehicle`);
  await heading("The vehicle");
  await type("Job number", "4108");
  await type("Customer", "I. Farrow");
  await screen.findByText("Saved");
  expect((await kept(rear.id)).record.job).toEqual(job);
  location.hash = "#/";
  const told = { ...job, number: "4108", customer: "I. Farrow" };
  await waitFor(async () => expect((await kept(rear.id)).record.job).toEqual(told));
  expect((await kept(front.id)).record.job).toEqual(told);
  await screen.findByRole("heading", { level: 2, name: /Job 4108 · I. Farrow/ });
});

it("takes a check out of its job", async () => {
  const [front, rear] = [check("Brant, front", "front", job), check("Brant, rear", "rear", job)];
  await keep(front, rear);
  startApp();
  await tap("More for Brant, rear");
  await tap("Job");
  await tap("Take this check out of the job");
  await waitFor(async () => expect((await kept(rear.id)).record.job).toBeUndefined());
  expect((await kept(front.id)).record.job).toEqual(job);
});

it("begins the other axle in the same job, and the list has both", async () => {
  const front = check("Brant, front", "front");
  await keep(front);
  startApp();
  await tap("More for Brant, front");
  await tap("Check the other axle");
  await heading("The vehicle");
  const store = await openStore();
  const listed = await store.list();
  store.close();
  const [other] = listed.ok ? listed.value.filter(({ id }) => id !== front.id) : [];
  expect(other?.record).toMatchObject({ axle: "rear", vehicle: { label: "Brant, front" } });
  expect(other?.record.job).toEqual((await kept(front.id)).record.job);
  location.hash = "#/";
  await waitFor(() => expect(document.querySelectorAll(".check-job .check-row")).toHaveLength(2));
});

it("is searched by customer and axle once there are many", async () => {
  const customer = { ...job, customer: "I. Farrow" };
  await keep(
    check("One", "front", customer),
    check("Two", "rear", customer),
    ...["Three", "Four", "Five", "Six"].map((name) => check(name, "front")),
  );
  startApp();
  const field = await screen.findByRole("searchbox", { name: "Find a check" });
  fireEvent.input(field, { target: { value: "farrow rear" } });
  await waitFor(() => expect(names()).toEqual(["Two"]));
  screen.getByText("1 of 6");
  fireEvent.input(field, { target: { value: "nobody" } });
  await screen.findByText("No check has all these words.");
});

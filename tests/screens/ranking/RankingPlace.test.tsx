import "fake-indexeddb/auto";
import { cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, expect, it } from "vitest";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import RankingPlace from "../../../src/screens/ranking/RankingPlace.tsx";
import { forgetPackInMemory, keepReferencePack } from "../../../src/screens/referencePack.ts";
import type { OpenedStore } from "../../../src/screens/useStore.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { freshPhone, openStore } from "../startApp.tsx";

beforeEach(() => {
  freshPhone();
  forgetPackInMemory();
});
afterEach(() => {
  cleanup();
  forgetPackInMemory();
});

const patience = { timeout: 60_000 };

async function opened(): Promise<OpenedStore> {
  return { store: await openStore(), fault: null, tryAgain: () => undefined };
}

async function show(id: string) {
  render(
    <RankingPlace opened={await opened()} id={id} unit="mm" startAssessor={startDeskAssessor} />,
  );
}

it("ranks the stops of the pack in use, tells what the check has otherwise, and compares two", async () => {
  const record = demoRecord("arm-fits");
  const stops = demoPack.stops
    .filter(({ name, mounting }) => name === record.stop.name || mounting === "M10 stud")
    .slice(0, 4)
    .map((stop) => (stop.name === record.stop.name ? { ...stop, usableCompressionMm: 30 } : stop));
  await keepReferencePack({ ...demoPack, stops, platforms: [] });
  const { store } = await opened();
  await store.put(storedFromRecord(record));
  await show(record.id);

  await screen.findByText(/with other figures than this check: usable compression/);
  await screen.findByText(new RegExp(`of ${stops.length} stops worked out`));
  await waitFor(() => expect(screen.queryByText(/stops worked out/)).toBeNull(), patience);
  // The check's own stop is judged as the check has it, and fits as its answer says.
  await screen.findByText("the one of this check");
  await screen.findByText(/^These fit \([1-9]/);
  const more = screen.queryByRole("button", { name: "Show them, and what fails" });
  if (more) fireEvent.click(more);
  const boxes = screen.getAllByRole("checkbox");
  for (const box of boxes.slice(0, 2)) fireEvent.click(box);
  fireEvent.click(screen.getByRole("button", { name: "Compare 2 side by side" }));
  await screen.findByRole("heading", { level: 1, name: "Side by side" });
  expect(screen.getAllByText("Force of the stops over their compression").length).toBe(1);
}, 90_000);

it("says what is missing where the check is not complete, and that it is gone where it is", async () => {
  const record = demoRecord("arm-fits");
  const { store } = await opened();
  const whole = storedFromRecord(record);
  await store.put({
    ...whole,
    record: { ...whole.record, corners: [] },
  });
  await show(record.id);
  await screen.findByRole("heading", { name: "The check is not complete yet" });
  cleanup();
  await show("no such check");
  await screen.findByText("This check is no longer on this phone.");
});

it("a stop that can't be mounted is never green: it is listed apart, untried, and one not known to mount waits", async () => {
  const record = demoRecord("arm-fits");
  const named = (id: string) => demoPack.stops.filter((stop) => stop.id === id);
  const fitted = demoPack.stops.filter(({ name }) => name === record.stop.name);
  // The fitted stop's own twin, which fits wherever that does, of a mounting that nobody wrote down.
  const twins = fitted.map(({ mount: _, mounting: __, ...stop }) => ({
    ...stop,
    id: "twin",
    name: "Twin",
    usableCompressionMm: stop.usableCompressionMm + 1,
  }));
  const stops = [...fitted, ...named("rod-stop"), ...twins];
  await keepReferencePack({ ...demoPack, stops, platforms: [] });
  const { store } = await opened();
  await store.put(storedFromRecord(record));
  await show(record.id);
  await screen.findByText(/^These mount differently \(1\)/);
  await waitFor(() => expect(screen.queryByText(/stops worked out/)).toBeNull(), patience);
  const rows = [...document.querySelectorAll("li.ranked")];
  expect(rows.filter((row) => row.textContent?.includes("Rod stop"))).toEqual([]);
  screen.getByText(/^Rod stop · /);
  const twin = rows.filter((row) => row.querySelector("h3")?.textContent?.includes("Twin"));
  expect(twin.length).toBeGreaterThan(0);
  for (const row of twin) {
    expect(row.querySelector(".tone-ok")).toBeNull();
    expect(row.textContent).toContain("Check first that it mounts");
  }
}, 90_000);

import { cleanup, fireEvent, render, screen } from "@testing-library/preact";
import { useState } from "preact/hooks";
import { afterEach, expect, it } from "vitest";
import { type DeskCheck, deskChecks } from "../../../src/records/review/decision.ts";
import { factsOf } from "../../../src/records/review/submission.ts";
import { CheckList } from "../../../src/screens/desk/CheckList.tsx";
import { generateRecords } from "../../support/generateRecords.ts";

afterEach(cleanup);

const checks = deskChecks(
  [...generateRecords(1000, 2)].map((record) => ({
    ...factsOf(record),
    key: record.id,
    receivedAt: "2026-05-02T10:00:00.000Z",
    way: "file" as const,
    photosLeftOut: 0,
    isComputed: 0 as const,
  })),
  [],
);

function Listed({ onOpen }: { onOpen: (check: DeskCheck) => void }) {
  const [at, setAt] = useState<string | null>(null);
  return <CheckList checks={checks} at={at} onAt={setAt} onOpen={onOpen} />;
}

it("draws the rows in sight only, and keys go through all of them", () => {
  const opened: string[] = [];
  render(<Listed onOpen={({ latest }) => opened.push(latest.key)} />);
  const list = screen.getByRole("listbox");
  expect(screen.getAllByRole("option").length).toBeLessThan(60);
  const selected = () =>
    screen
      .getAllByRole("option")
      .filter((option) => option.getAttribute("aria-selected") === "true")
      .map((option) => option.getAttribute("aria-posinset"));
  expect(selected()).toEqual(["1"]);
  fireEvent.keyDown(list, { key: "ArrowDown" });
  fireEvent.keyDown(list, { key: "ArrowDown" });
  fireEvent.keyDown(list, { key: "ArrowUp" });
  expect(selected()).toEqual(["2"]);
  fireEvent.keyDown(list, { key: "Enter" });
  fireEvent.keyDown(list, { key: "Home" });
  fireEvent.keyDown(list, { key: "ArrowUp" });
  expect(selected()).toEqual(["1"]);
  fireEvent.click(screen.getAllByRole("option")[3] as HTMLElement);
  expect(opened).toEqual([checks[1]?.latest.key, checks[3]?.latest.key]);
});

it("tells of every row its place among all, its axle, who and state in words", () => {
  render(<Listed onOpen={() => undefined} />);
  const [first] = screen.getAllByRole("option");
  expect(first?.getAttribute("aria-setsize")).toBe("1000");
  const { vehicle } = checks[0]?.latest ?? { vehicle: "none" };
  for (const words of [vehicle, "Not computed yet", "New"]) {
    expect(first?.textContent).toContain(words);
  }
});

import "fake-indexeddb/auto";
import { cleanup, screen } from "@testing-library/preact";
import { afterEach, expect, it, vi } from "vitest";
import { demoRecord } from "../answer/demoChecks.ts";
import { deskWith } from "./support.tsx";

afterEach(cleanup);
vi.setConfig({ testTimeout: 60_000 });

const fits = demoRecord("arm-fits");

it("says how to have a vehicle measured twice while none was, and of no statistics", async () => {
  const desk = await deskWith(fits);
  desk.show({ place: "people" });
  await screen.findByText(/No check here was measured by two people yet/);
  expect(screen.queryByText(/spread|pairs/i)).toBeNull();
});

it("counts what two people measured, and then tells what spread is", async () => {
  const second = {
    by: "Ada",
    at: "2026-05-20T12:00:00.000Z",
    readings: { "left.gap": { values: [23], tol: 1 } },
  };
  const desk = await deskWith({ ...fits, second } as typeof fits);
  desk.show({ place: "people" });
  await screen.findByText(/^1 check measured by two people/);
  await screen.findByText(/^Spread: how much one person's readings usually scatter/);
});

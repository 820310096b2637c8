import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { chooseLayout } from "../../../src/records/filling/changes.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { levelCautions, raisedCautions } from "../../../src/screens/guide/cautions.ts";
import { standingSteps } from "../../../src/screens/guide/standing.ts";
import {
  choose,
  freshPhone,
  heading,
  keep,
  kept,
  startApp,
  tap,
  tick,
  type,
} from "../startApp.tsx";

let stored: StoredCheck;

beforeEach(async () => {
  freshPhone();
  stored = changeRecord(
    chooseLayout(withSides(newStoredCheck("Tern"), "left"), "strut"),
    (record) => ({
      ...record,
      axle: "front",
      vehicle: { label: "Tern", platformId: null, liftMm: 0, use: "daily" },
    }),
  );
  await keep(stored);
});

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

const tickAll = async () => {
  const count = screen.getAllByRole("checkbox").length;
  for (let index = 0; index < count; index += 1) {
    const box = screen.getAllByRole("checkbox")[index] as HTMLInputElement;
    if (!box.checked) fireEvent.click(box);
    await waitFor(() => expect(box.checked).toBe(true));
  }
};
const acknowledged = async () => (await kept(stored.id)).progress.cautionsFor;

describe("the cautions", () => {
  it("are acknowledged one by one before the way goes on", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await heading("Before you measure");
    expect(screen.getAllByRole("checkbox")).toHaveLength(
      levelCautions.length + standingSteps.length,
    );
    const [first] = levelCautions;
    await tick(first?.words ?? "");
    await screen.findByText(
      `${levelCautions.length - 1} of ${levelCautions.length} still to tick.`,
    );
    const locked = screen.getByRole("button", {
      name: "Tick each to continue",
    }) as HTMLButtonElement;
    expect(locked.disabled).toBe(true);
    await tickAll();
    await tap("Next");
    await heading("Which axle, which sides");
    await waitFor(async () => expect(await acknowledged()).toBe("level"));
  });

  it("keep a tick made before a reload", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await tick(levelCautions[2]?.words ?? "");
    await waitFor(() => screen.getByText("Saved"));
    cleanup();
    startApp(`#/check/${stored.id}/cautions`);
    const box = await screen.findByRole("checkbox", { name: levelCautions[2]?.words ?? "" });
    expect((box as HTMLInputElement).checked).toBe(true);
  });

  it("stand before every reading, and the reading comes after them", async () => {
    startApp(`#/check/${stored.id}/left.gap`);
    await heading("Before you measure");
    await screen.findByText(/Next: Gap/);
    await tickAll();
    await tap("Next");
    await heading("Left: Gap");
  });

  it("come back in full when the vehicle is raised, with those for raised vehicles first", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await heading("Before you measure");
    await tickAll();
    await waitFor(async () => expect(await acknowledged()).toBe("level"));
    location.hash = `#/check/${stored.id}/vehicle`;
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "50");
    location.hash = `#/check/${stored.id}/left.gap`;
    await heading("Before you measure");
    const boxes = (screen.getAllByRole("checkbox") as HTMLInputElement[]).slice(
      0,
      -standingSteps.length,
    );
    expect(boxes).toHaveLength(levelCautions.length + raisedCautions.length);
    expect(boxes.filter(({ checked }) => checked)).toHaveLength(0);
    expect(boxes[0]?.labels?.[0]?.textContent).toContain(raisedCautions[0]?.words);
    await tickAll();
    await waitFor(async () => expect(await acknowledged()).toBe("raised"));
  });

  it("hold for a level vehicle once they were acknowledged for a raised one", async () => {
    startApp(`#/check/${stored.id}/vehicle`);
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "50");
    location.hash = `#/check/${stored.id}/cautions`;
    await heading("Before you measure");
    await tickAll();
    location.hash = `#/check/${stored.id}/vehicle`;
    await heading("The vehicle");
    await choose("No");
    location.hash = `#/check/${stored.id}/left.gap`;
    await heading("Left: Gap");
  });

  it("are asked as for a raised vehicle while its lift can't be read", async () => {
    startApp(`#/check/${stored.id}/vehicle`);
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "some");
    location.hash = `#/check/${stored.id}/cautions`;
    await screen.findByText(raisedCautions[0]?.words ?? "");
  });
});

describe("the lift", () => {
  it("comes back as typed when “raised” is chosen again", async () => {
    startApp(`#/check/${stored.id}/vehicle`);
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "50");
    await choose("No");
    await waitFor(async () => expect((await kept(stored.id)).record.vehicle?.liftMm).toBe(0));
    await choose("Yes, raised");
    expect(((await screen.findByLabelText("Raised by")) as HTMLInputElement).value).toBe("50");
    await waitFor(async () => expect((await kept(stored.id)).record.vehicle?.liftMm).toBe(50));
  });
});

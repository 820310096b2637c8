import "fake-indexeddb/auto";
import { cleanup, screen, waitFor } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { chooseLayout } from "../../../src/records/filling/changes.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { levelCautions, raisedCautions } from "../../../src/screens/guide/cautions.ts";
import { choose, freshPhone, heading, keep, kept, startApp, tap, type } from "../startApp.tsx";

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

/** Where each caution stands in the list; -1 for one that is missing. */
const placeOf = ({ words }: { words: string }) =>
  screen.getAllByRole("listitem").findIndex((line) => line.textContent?.endsWith(words));
const read = (count: number) => tap(`I've read all ${count}`);
const acknowledged = async () => (await kept(stored.id)).progress.cautionsFor;
const all = levelCautions.length + raisedCautions.length;

describe("the cautions", () => {
  it("stand there every one, and are acknowledged before the way goes on", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await heading("Before you measure");
    expect(levelCautions.map(placeOf)).not.toContain(-1);
    expect(screen.queryByRole("button", { name: "Next" })).toBeNull();
    expect(await acknowledged()).toBeNull();
    await read(levelCautions.length);
    await heading("Set up the vehicle");
    await waitFor(async () => expect(await acknowledged()).toBe("level"));
  });

  it("are there to read again once they are acknowledged", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await read(levelCautions.length);
    await heading("Set up the vehicle");
    await tap("Back");
    await screen.findByText("All acknowledged.");
    expect(levelCautions.map(placeOf)).not.toContain(-1);
    await tap("Next");
    await heading("Set up the vehicle");
  });

  it("lead on to their end first where they are longer than the screen", async () => {
    let inSight: () => void = () => undefined;
    vi.stubGlobal(
      "IntersectionObserver",
      class {
        constructor(tell: (entries: readonly { isIntersecting: boolean }[]) => void) {
          inSight = () => tell([{ isIntersecting: true }]);
        }
        observe(): void {}
        disconnect(): void {}
      },
    );
    const scrollBy = vi.fn();
    vi.stubGlobal("scrollBy", scrollBy);
    startApp(`#/check/${stored.id}/cautions`);
    await tap("Read on");
    expect(scrollBy).toHaveBeenCalledOnce();
    expect(await acknowledged()).toBeNull();
    inSight();
    await read(levelCautions.length);
    await waitFor(async () => expect(await acknowledged()).toBe("level"));
  });

  it("stand before every reading, and the reading comes after them", async () => {
    startApp(`#/check/${stored.id}/left.gap`);
    await heading("Before you measure");
    await screen.findByText(/Next: Gap/);
    await read(levelCautions.length);
    await heading("Left: Gap");
  });

  it("come back in full when the vehicle is raised, with those for raised vehicles first", async () => {
    startApp(`#/check/${stored.id}/cautions`);
    await read(levelCautions.length);
    await waitFor(async () => expect(await acknowledged()).toBe("level"));
    location.hash = `#/check/${stored.id}/vehicle`;
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "50");
    location.hash = `#/check/${stored.id}/left.gap`;
    await heading("Before you measure");
    const places = [...raisedCautions, ...levelCautions].map(placeOf);
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    await read(all);
    await waitFor(async () => expect(await acknowledged()).toBe("raised"));
  });

  it("hold for a level vehicle once they were acknowledged for a raised one", async () => {
    startApp(`#/check/${stored.id}/vehicle`);
    await heading("The vehicle");
    await choose("Yes, raised");
    await type("Raised by", "50");
    location.hash = `#/check/${stored.id}/cautions`;
    await read(all);
    await waitFor(async () => expect(await acknowledged()).toBe("raised"));
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

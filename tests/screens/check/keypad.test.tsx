import "fake-indexeddb/auto";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  changeProgress,
  changeRecord,
  newStoredCheck,
  type StoredCheck,
} from "../../../src/records/check/storedCheck.ts";
import { chooseLayout } from "../../../src/records/filling/changes.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { changePreferences } from "../../../src/screens/preferences.ts";
import { choose, freshPhone, heading, keep, kept, startApp } from "../startApp.tsx";

let stored: StoredCheck;

/** A screen under a finger, or under a mouse. */
function pointerIs(kind: "coarse" | "fine") {
  vi.stubGlobal("matchMedia", (query: string) => ({
    matches: query.includes(kind),
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  }));
}

beforeEach(async () => {
  freshPhone();
  pointerIs("coarse");
  const fresh = chooseLayout(withSides(newStoredCheck("Tern"), "both"), "arm");
  const named = changeRecord(fresh, (record) => ({
    ...record,
    axle: "front",
    vehicle: { label: "Tern", platformId: null, liftMm: 0, use: "daily" },
  }));
  stored = changeProgress(named, { cautionsFor: "level" });
  await keep(stored);
});

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

async function field(step: string, label: string): Promise<HTMLInputElement> {
  startApp(`#/check/${stored.id}/${step}`);
  await heading(/./);
  const input = (await screen.findByLabelText(label)) as HTMLInputElement;
  fireEvent.focus(input);
  return input;
}

const keypad = () => screen.findByRole("group", { name: /^Keys for/ });
async function press(...names: (string | RegExp)[]) {
  for (const name of names) {
    fireEvent.click(within(await keypad()).getByRole("button", { name }));
  }
}
const gap = async () => (await kept(stored.id)).record.corners[0]?.gap;

describe("the keys", () => {
  it("type millimetres into the real field, which keeps the phone's keyboard away", async () => {
    const input = await field("left.gap", "Left gap");
    expect(input.inputMode).toBe("none");
    await press("5", "8", "Point", "7");
    expect(input.value).toBe("58.7");
    await screen.findByText(/= 2.31 in/);
    await waitFor(async () => expect((await gap())?.values).toEqual([58.7]));
  });

  it("type inches with fractions, and the number stays in the other unit", async () => {
    const input = await field("left.gap", "Left gap");
    await choose("inches");
    fireEvent.focus(input);
    await press("2", "1/4", "Add 1/16");
    expect(input.value).toBe("2 5/16");
    await screen.findByText("= 58.7 mm");
    await waitFor(async () => expect((await gap())?.typed).toEqual(["2 5/16 in"]));
    await choose("mm");
    expect(input.value).toBe("2 5/16");
  });

  it("say to who can't see it what stands there now", async () => {
    await field("left.gap", "Left gap");
    await press("5", "8");
    expect(within(await keypad()).getByRole("status").textContent).toBe("58 millimeters");
  });

  it("clear, and bring back what was cleared", async () => {
    const input = await field("left.gap", "Left gap");
    await press("5", "8", "Take back the last", "9", "Clear");
    expect(input.value).toBe("");
    await press("Bring back what was cleared");
    expect(input.value).toBe("59");
    await press("Clear", "3");
    expect(within(await keypad()).getByRole("button", { name: "Clear" })).toBeTruthy();
    expect(input.value).toBe("3");
  });

  it("have a sign where one makes sense, and only there", async () => {
    const input = await field("armAngle", "Arm angle");
    await press("8", "Point", "5", "Plus or minus");
    expect(input.value).toBe("-8.5");
    cleanup();
    await field("left.gap", "Left gap");
    expect(within(await keypad()).queryByRole("button", { name: "Plus or minus" })).toBeNull();
    expect(within(await keypad()).queryByRole("button", { name: "1/8" })).toBeNull();
  });

  it("lead on to the next number of the screen, and are put away after the last", async () => {
    const gone = () =>
      waitFor(() => expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull());
    const alone = await field("left.gap", "Left gap");
    await press("5", "8", "Done, hide the keypad");
    await gone();
    expect(alone.value).toBe("58");
    fireEvent.click(screen.getByRole("button", { name: "Add a repeat" }));
    const first = await screen.findByLabelText("Left gap, time 1");
    const second = screen.getByLabelText("Left gap, time 2");
    await waitFor(() => expect(document.activeElement).toBe(second));
    first.focus();
    await waitFor(() =>
      expect(screen.getAllByRole("group", { name: /^Keys for/ })).toHaveLength(1),
    );
    await press("Next field");
    expect(document.activeElement).toBe(second);
    await press("Done, hide the keypad");
    await gone();
    expect(location.hash).toContain("left.gap");
  });

  it("go when another thing is chosen, and stay while it is one of them", async () => {
    const input = await field("left.gap", "Left gap");
    const one = within(await keypad()).getByRole("button", { name: "1" });
    fireEvent.blur(input, { relatedTarget: one });
    await new Promise((done) => setTimeout(done, 400));
    await keypad();
    fireEvent.focusOut(one, { relatedTarget: document.body });
    await waitFor(() => expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull());
    fireEvent.focus(input);
    await keypad();
    fireEvent.keyDown(input, { key: "Escape" });
    await waitFor(() => expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull());
  });

  it("give way to the phone's keyboard for one field", async () => {
    const input = await field("left.gap", "Left gap");
    await press("The phone's keyboard");
    await waitFor(() => expect(input.inputMode).toBe("decimal"));
    expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull();
  });

  it("are not there under a mouse, nor where the phone's keyboard is wanted", async () => {
    pointerIs("fine");
    const input = await field("left.gap", "Left gap");
    expect(input.inputMode).toBe("decimal");
    expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull();
    cleanup();
    pointerIs("coarse");
    changePreferences({ keys: "phone" });
    expect((await field("left.gap", "Left gap")).inputMode).toBe("decimal");
    expect(screen.queryByRole("group", { name: /^Keys for/ })).toBeNull();
  });
});

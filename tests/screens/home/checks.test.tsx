import "fake-indexeddb/auto";
import { cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  changeRecord,
  newStoredCheck,
  renameStored,
} from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { withSides } from "../../../src/records/filling/sides.ts";
import { App } from "../../../src/screens/app.tsx";
import { checkFileText } from "../../../src/screens/checkFile.ts";
import { UndoBar } from "../../../src/screens/home/UndoBar.tsx";
import { tinyPhoto } from "../../support/pictures.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { freshPhone, heading, keep, kept, openStore, startApp, tap, type } from "../startApp.tsx";

beforeEach(freshPhone);

afterEach(() => {
  vi.useRealTimers();
  cleanup();
  vi.unstubAllGlobals();
});

const named = (name: string) => newStoredCheck(name);
const names = () => [...document.querySelectorAll(".check-name")].map((each) => each.textContent);
const file = (text: string, name: string) => new File([text], name, { type: "application/json" });

async function pick(...files: readonly File[]): Promise<void> {
  const opener = await screen.findByRole("button", { name: "Open a file" });
  await waitFor(() => expect((opener as HTMLButtonElement).disabled).toBe(false));
  const input = screen.getByLabelText("Files to open") as HTMLInputElement;
  Object.defineProperty(input, "files", { value: files, configurable: true });
  fireEvent.change(input);
}

describe("the list of checks on this phone", () => {
  it("says what Stopfit is for where there is none yet", async () => {
    startApp();
    await screen.findByText("Will this bump stop work on your vehicle?");
    await screen.findByRole("button", { name: "Open demo checks" });
  });

  it("opens an example from the first visit", async () => {
    startApp();
    await tap("See an example");
    await waitFor(() => expect(location.hash).toMatch(/^#\/check\/.+\/answer$/), {
      timeout: 20_000,
    });
  });

  it("goes on where a check was left, and says which part and step that is", async () => {
    const left = newStoredCheck("Tern, blue");
    await keep({ ...left, progress: { ...left.progress, step: "standing" } });
    startApp();
    const link = await screen.findByRole("link", { name: /^Continue: Tern, blue/ });
    await waitFor(() => expect(link.textContent).toMatch(/Safety: 2 of 2$/));
    expect(link.getAttribute("href")).toBe(`#/check/${left.id}`);
  });

  it("starts a new check, and has it in the list afterwards", async () => {
    startApp();
    await screen.findByText("Will this bump stop work on your vehicle?");
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    await type("Vehicle", "Marlow, job 7");
    await waitFor(() => screen.getByText("Saved"));
    location.hash = "#/";
    await screen.findByRole("link", { name: /Marlow, job 7.*No answer yet/ });
  });

  it("offers the person of the last check for the next one", async () => {
    startApp();
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    await type(/^Name \(/, "Ada");
    await waitFor(() => screen.getByText("Saved"));
    location.hash = "#/";
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    expect((screen.getByLabelText(/^Name \(/) as HTMLInputElement).value).toBe("Ada");
  });

  it("shows the verdict in words where it is known", async () => {
    await keep({ ...named("Tern"), lastVerdict: "no" });
    startApp();
    await screen.findByRole("link", { name: /Tern.*Does not fit/ });
  });

  it("renames, and copies under a name that tells the two apart", async () => {
    await keep(named("Tern"));
    startApp();
    await tap("More for Tern");
    await tap("Rename");
    const dialog = within(await screen.findByRole("dialog"));
    fireEvent.input(dialog.getByLabelText("Name"), { target: { value: "Tern, blue" } });
    fireEvent.click(dialog.getByRole("button", { name: "Rename" }));
    await waitFor(() => expect(names()).toEqual(["Tern, blue"]));
    await tap("More for Tern, blue");
    await tap("Copy");
    await waitFor(() => expect(names().sort()).toEqual(["Tern, blue", "Tern, blue (copy)"]));
  });

  it("deletes softly: undone at once, or brought back later", async () => {
    const stored = named("Tern");
    await keep(stored, named("Brant"));
    startApp();
    await tap("More for Tern");
    await tap("Delete");
    await screen.findByText("Deleted: Tern");
    expect(names()).toEqual(["Brant"]);
    expect((await kept(stored.id)).deletedAt).toBeTruthy();
    await tap("Undo");
    await waitFor(() => expect(names().sort()).toEqual(["Brant", "Tern"]));
    expect((await kept(stored.id)).deletedAt).toBeUndefined();
    expect(screen.queryByText("Deleted: Tern")).toBeNull();

    await tap("More for Tern");
    await tap("Delete");
    await screen.findByText("Deleted: Tern");
    await tap("Bring back Tern");
    await waitFor(() => expect(names().sort()).toEqual(["Brant", "Tern"]));
  });

  it("deletes for good only what was deleted before, and only when asked twice", async () => {
    await keep(named("Tern"), named("Brant"));
    startApp();
    await tap("More for Tern");
    await tap("Delete");
    await screen.findByText("Deleted: Tern");
    await tap("Delete for good");
    await tap("Leave them");
    await screen.findByText("Deleted checks (1)");
    await tap("Delete for good");
    const dialog = within(await screen.findByRole("dialog"));
    fireEvent.click(dialog.getByRole("button", { name: "Delete for good" }));
    await waitFor(() => expect(screen.queryByText("Deleted checks (1)")).toBeNull());
    expect(names()).toEqual(["Brant"]);
    expect(screen.queryByText("Deleted: Tern")).toBeNull();
  });

  it("leaves more than 8 s to undo, then takes the bar away", async () => {
    vi.useFakeTimers();
    const onUndo = vi.fn();
    const onGone = vi.fn();
    render(<UndoBar words="Deleted: Tern" onUndo={onUndo} onGone={onGone} />);
    await vi.advanceTimersByTimeAsync(8000);
    expect(onGone).not.toHaveBeenCalled();
    fireEvent.click(screen.getByRole("button", { name: "Undo" }));
    expect(onUndo).toHaveBeenCalledTimes(1);
    // While the keyboard is on it, it stays.
    await vi.advanceTimersByTimeAsync(10_000);
    expect(onGone).not.toHaveBeenCalled();
    screen.getByRole("button", { name: "Undo" }).blur();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(onGone).toHaveBeenCalledTimes(1);
  });

  it("adds the demo checks once, and brings back those that were deleted", async () => {
    startApp();
    await tap("Open demo checks");
    await waitFor(() => expect(names()).toHaveLength(18));
    await tap("More for Tern van, loaded");
    await tap("Delete");
    await waitFor(() => expect(names()).toHaveLength(17));
    await tap("Open demo checks");
    await waitFor(() => expect(names()).toHaveLength(18));
    await tap("Open demo checks");
    await waitFor(() => expect(names()).toHaveLength(18));
  });
});

describe("opening a file", () => {
  it("asks before anything is kept", async () => {
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await pick(file(JSON.stringify(demoRecord("arm-fits")), "marlow.json"));
    const dialog = within(await screen.findByRole("dialog"));
    dialog.getByRole("heading", { name: "Save this check on this phone?" });
    dialog.getByText("Marlow 4-door utility");
    fireEvent.click(dialog.getByRole("button", { name: "Don't save" }));
    await waitFor(() => expect(screen.queryByRole("dialog")).toBeNull());
    expect(names()).toEqual([]);
    await pick(file(JSON.stringify(demoRecord("arm-fits")), "marlow.json"));
    await tap("Save");
    await waitFor(() => expect(names()).toEqual(["Marlow 4-door utility"]));
    expect((await kept(demoRecord("arm-fits").id)).record).toEqual(demoRecord("arm-fits"));
  });

  it("keeps one that is here already beside it, never over it", async () => {
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    for (let time = 0; time < 2; time += 1) {
      await pick(file(JSON.stringify(demoRecord("arm-fits")), "marlow.json"));
      await tap("Save");
      await waitFor(() => expect(names()).toHaveLength(time + 1));
    }
    expect(names().sort()).toEqual(["Marlow 4-door utility", "Marlow 4-door utility (received)"]);
    // Both are versions of one check: the record keeps its number.
    const listed = await (await openStore()).list();
    const numbers = listed.ok ? listed.value.map(({ record }) => record.id) : [];
    expect(new Set(numbers)).toEqual(new Set([demoRecord("arm-fits").id]));
  });

  it.each([
    ["an empty file", ""],
    ["no JSON", "<html>"],
    ["another format", '{"format": "shopping-list", "version": 1}'],
    ["a newer version", '{"format": "stopfit-check", "version": 99}'],
    [
      "a number out of range",
      JSON.stringify(demoRecord("arm-fits")).replace('"liftMm":0', '"liftMm":1e999'),
    ],
  ])("refuses %s with a sentence", async (_, text) => {
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await pick(file(text, "odd.json"));
    const dialog = within(await screen.findByRole("dialog"));
    dialog.getByRole("heading", { name: "Nothing to save" });
    const said = dialog.getByText("odd.json").closest("p")?.textContent ?? "";
    expect(said).toMatch(/^odd\.json: .{12,}\.$/);
    expect(said).not.toMatch(/undefined|NaN|\[object/);
  });

  it("takes the good ones of several and says what is wrong with the others", async () => {
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await pick(
      file(JSON.stringify(demoRecord("arm-fits")), "a.json"),
      file("nothing", "b.json"),
      file(JSON.stringify(demoRecord("strut-too-stiff")), "c.json"),
    );
    const dialog = within(await screen.findByRole("dialog"));
    dialog.getByRole("heading", { name: "Save these 2 checks on this phone?" });
    dialog.getByText("b.json");
    fireEvent.click(dialog.getByRole("button", { name: "Save" }));
    await waitFor(() => expect(names()).toHaveLength(2));
  });

  it("goes on with one that was saved before it was complete", async () => {
    let draft = renameStored(withSides(newStoredCheck(), "both"), "Half done");
    draft = setEntry(draft, "left.gap", { texts: ["21", "2o"], unit: "mm", tol: "1" });
    const byTape = { tool: "tapeII", reach: "clear" };
    draft = setEntry(draft, "right.gap", { texts: ["7/8"], unit: "in", tol: "", ...byTape });
    const photo = { ...tinyPhoto, reading: "right.gap" };
    draft = changeRecord(draft, (record) => ({ ...record, photos: [photo] }));
    startApp();
    await heading(/^(Checks on this phone|Will this bump stop)/);
    await pick(file(checkFileText(draft), "half.json"));
    const dialog = within(await screen.findByRole("dialog"));
    dialog.getByText(/not complete/);
    fireEvent.click(dialog.getByRole("button", { name: "Save" }));
    await waitFor(() => expect(names()).toEqual(["Half done"]));
    const store = await openStore();
    const listed = await store.list();
    const found = await store.get((listed.ok && listed.value[0]?.id) || "");
    const again = found.ok ? found.value : null;
    store.close();
    expect(again?.entries["left.gap"]).toEqual(draft.entries["left.gap"]);
    expect(again?.record.corners).toEqual(draft.record.corners);
    expect(again?.entries["right.gap"]).toStrictEqual(draft.entries["right.gap"]);
    expect(again?.record.corners[1]?.gap?.tool).toBe("tapeII");
    expect(again?.record.photos).toEqual([photo]);
    expect(again?.progress.cautionsFor).toBeNull();
  });
});

describe("where the browser keeps nothing", () => {
  const refused = () =>
    Promise.resolve({
      ok: false as const,
      fault: { code: "storeRefused", sentence: ["Not saved: this browser refuses to store."] },
    });

  it("says so, lets the check go on, and offers the file", async () => {
    render(<App open={refused} />);
    await screen.findByText(/this browser refuses to store/);
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    await type("Vehicle", "Tern");
    await screen.findByText("Not saved");
    await screen.findByText(/this browser refuses to store/);
    expect(screen.getByRole("button", { name: "Save as a file" })).toBeTruthy();
    expect((screen.getByLabelText("Vehicle") as HTMLInputElement).value).toBe("Tern");
  });

  it("keeps what was typed meanwhile as soon as it can", async () => {
    let refusing = true;
    const open = async () => {
      if (refusing) return refused();
      return { ok: true as const, value: await openStore() };
    };
    render(<App open={open} />);
    await tap(/^(New|Full) check/);
    await heading("The vehicle");
    await type("Vehicle", "Tern");
    await screen.findByText("Not saved");
    refusing = false;
    await tap("Try again");
    await screen.findByText("Saved");
    expect((screen.getByLabelText("Vehicle") as HTMLInputElement).value).toBe("Tern");
    const id = /check\/([^/]+)/.exec(location.hash)?.[1] ?? "";
    await waitFor(async () => expect((await kept(id)).record.vehicle?.label).toBe("Tern"));
  });
});

describe("an address", () => {
  it("that names nothing leads back to the list", async () => {
    startApp("#/nowhere/at/all");
    await heading("There is nothing at this address");
    fireEvent.click(screen.getByRole("link", { name: "All checks" }));
    await heading(/^(Checks on this phone|Will this bump stop)/);
    expect(location.hash).toBe("#/");
  });

  it("of a check that is not here says so", async () => {
    startApp("#/check/00000000-0000-4000-8000-000000000000/vehicle");
    await heading("This check is not here");
  });
});

import "fake-indexeddb/auto";
import { act, cleanup, fireEvent, render, screen, waitFor } from "@testing-library/preact";
import { afterEach, describe, expect, it } from "vitest";
import { backupLineText } from "../../../src/records/backup/backupLine.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { newStoredCheck, renameStored } from "../../../src/records/check/storedCheck.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import { readingsDigest } from "../../../src/records/review/readingsDigest.ts";
import type { Reply } from "../../../src/records/review/reply.ts";
import { checkFileText } from "../../../src/screens/checkFile.ts";
import SharePlace from "../../../src/screens/exchange/SharePlace.tsx";
import { readShareRoute, type ShareRoute } from "../../../src/screens/exchange/shareRoutes.ts";
import { takeHandedPack } from "../../../src/screens/handedPack.ts";
import { linkOfPacked, packLibrary, replyLink, shareLink } from "../../../src/sharing/shareLink.ts";
import { ReplyStore } from "../../../src/storage/replyStore.ts";
import { demoRecord } from "../answer/demoChecks.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { freshStore, openedWith } from "./support.ts";

afterEach(() => {
  cleanup();
  location.hash = "";
});

function linkOf(record: CheckRecord): string {
  const link = shareLink(record, "https://stopfit.example/app/");
  if (!link.ok) throw new Error(link.fault.code);
  return link.value.address;
}

async function show(route: ShareRoute) {
  const store = await freshStore();
  const view = render(
    <SharePlace
      route={route}
      opened={openedWith(store)}
      unit="mm"
      startAssessor={startDeskAssessor}
    />,
  );
  return { ...view, store };
}

async function chooseFiles(...files: readonly File[]) {
  const input = screen.getByLabelText<HTMLInputElement>("Files to open");
  Object.defineProperty(input, "files", { configurable: true, value: files });
  await act(async () => {
    fireEvent.change(input);
    await new Promise((done) => setTimeout(done, 30));
  });
}

const textFile = (text: string, name = "check.txt") => new File([text], name);
const openNothing: ShareRoute = { screen: "open", payload: null };
const first = demoRecord("arm-fits");
const second = demoRecord("damper-shaft");

describe("a parts library", () => {
  const pack = { ...demoPack, name: "Marsh Road pack" };

  it("by a link goes to the screen that asks what to do with it", async () => {
    const link = linkOfPacked(packLibrary(pack), "https://stopfit.example/app/");
    if (!link.ok) throw new Error(link.fault.code);
    await show(readShareRoute(new URL(link.value.address).hash) ?? openNothing);
    await waitFor(() => expect(location.hash).toBe("#/pack"));
    expect(takeHandedPack()).toEqual({ pack, file: "Marsh Road pack" });
    expect(takeHandedPack()).toBeNull();
  });

  it("by a file, too; one from the future is a sentence", async () => {
    await show(openNothing);
    await chooseFiles(textFile(JSON.stringify(pack), "pack.json"));
    await waitFor(() => expect(location.hash).toBe("#/pack"));
    expect(takeHandedPack()?.pack).toEqual(pack);
    cleanup();
    await show(openNothing);
    await chooseFiles(textFile(JSON.stringify({ ...pack, version: 3 }), "later.json"));
    await screen.findByText(/was made by a newer version of Stopfit \(pack version 3\)/);
  });
});

describe("places", () => {
  it("are read from the part of the address after #", () => {
    expect(readShareRoute("#/open/1bAB-_e")).toEqual({ screen: "open", payload: "1bAB-_e" });
    expect(readShareRoute("#/open")).toEqual(openNothing);
    expect(readShareRoute("#/open/")).toEqual(openNothing);
    expect(readShareRoute("#/scan")).toEqual({ screen: "scan" });
    expect(readShareRoute("#/received")).toEqual({ screen: "received" });
    for (const hash of ["", "#/", "#/check/1", "#/opening", "#/scanner"]) {
      expect(readShareRoute(hash)).toBeNull();
    }
  });
});

describe("a link", () => {
  it("shows its check and is gone from the history once it is dealt with", async () => {
    const payload = linkOf(first).split("#/open/")[1] ?? "";
    location.hash = `#/open/${payload}`;
    const steps = history.length;
    await show({ screen: "open", payload });
    await screen.findByRole("heading", { level: 1, name: "A check was sent to you" });
    fireEvent.click(screen.getByRole("button", { name: "Don't save" }));
    expect(location.hash).toBe("#/");
    expect(history.length).toBe(steps);
  });

  it("that is cut says so, and the other ways in are offered", async () => {
    const payload = (linkOf(first).split("#/open/")[1] ?? "").slice(0, 120);
    await show({ screen: "open", payload });
    await screen.findByText(/The link is cut short: \d+ of \d+ characters arrived/);
    expect(screen.getByRole("button", { name: "Choose a file" })).toBeTruthy();
  });

  it("is found in a pasted message", async () => {
    await show(openNothing);
    const field = screen.getByLabelText("Link or message");
    fireEvent.input(field, { target: { value: `Hello, see ${linkOf(second)} – thanks` } });
    fireEvent.click(screen.getByRole("button", { name: "Open the link" }));
    await screen.findByText(second.vehicle.label);
  });

  it("is missed in a pasted message without one", async () => {
    await show(openNothing);
    fireEvent.input(screen.getByLabelText("Link or message"), { target: { value: "Hello" } });
    fireEvent.click(screen.getByRole("button", { name: "Open the link" }));
    await screen.findByText(/The pasted text holds no check/);
  });
});

describe("files", () => {
  it("are shown one after another, and only those kept that are chosen", async () => {
    const { store } = await show(openNothing);
    await chooseFiles(
      textFile(JSON.stringify(first)),
      textFile("{ not JSON", "broken.txt"),
      textFile(JSON.stringify(second)),
    );
    await screen.findByText(first.vehicle.label);
    expect(screen.getByText(/The file “broken.txt” is not a check|broken.txt/)).toBeTruthy();
    expect(screen.getByText("One more check came with it.")).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Next" }));
    await waitFor(() => screen.getByText(second.vehicle.label));
    const keep = await screen.findByRole<HTMLButtonElement>("button", {
      name: "Save on this phone",
    });
    await waitFor(() => expect(keep.disabled).toBe(false));
    fireEvent.click(keep);
    await waitFor(() => expect(location.hash).toBe(`#/check/${second.id}`));
    const list = await store.list();
    expect(list.ok && list.value.map(({ id }) => id)).toEqual([second.id]);
  });

  it.each([
    ["is empty", textFile(""), /holds no check|is empty/],
    ["is another thing", textFile("Dear all"), /holds no check/],
    ["is another format", textFile('{"format":"other"}'), /is not a fitment check/],
    ["is cut off", textFile(JSON.stringify(first).slice(0, 700)), /is cut off/],
    [
      "is of a newer version",
      textFile(JSON.stringify({ ...first, version: 3 })),
      /newer version of Stopfit/,
    ],
    [
      "has more limits than a vehicle can",
      textFile(
        JSON.stringify({
          ...first,
          corners: first.corners.map((corner) => ({
            ...corner,
            limits: Array.from({ length: 10_000 }, () => corner.limits[0]),
          })),
        }),
      ),
      /clearances/,
    ],
  ])("that %s is a sentence", async (_, file, words) => {
    await show(openNothing);
    await chooseFiles(file);
    expect(screen.getByText(words)).toBeTruthy();
  });

  it("of 1 GB is refused without being read", async () => {
    await show(openNothing);
    const huge = textFile("{}", "huge.txt");
    Object.defineProperty(huge, "size", { value: 1e9 });
    Object.defineProperty(huge, "text", { value: () => Promise.reject(new Error("was read")) });
    await chooseFiles(huge);
    expect(screen.getByText(/1000 MB, and the most is 32 MB. It was not read/)).toBeTruthy();
  });

  it("that the device opened the app with are shown", async () => {
    const store = await freshStore();
    render(
      <SharePlace
        route={{ screen: "received" }}
        opened={openedWith(store)}
        unit="mm"
        launched={[textFile(JSON.stringify(first))]}
        startAssessor={startDeskAssessor}
      />,
    );
    await waitFor(() => screen.getByText(first.vehicle.label));
  });
});

describe("replies, drafts and backups come by the same ways", () => {
  const reply = (id: string, of: CheckRecord = first): Reply => ({
    format: "stopfit-reply",
    version: 1,
    id,
    checkId: of.id,
    createdAt: "2026-05-04T10:00:00.000Z",
    from: "M. Lind",
    kind: "askAgain",
    vehicle: of.vehicle.label,
    axle: of.axle,
    readings: ["left.gap"],
    text: "Please take the left gap again.",
  });
  const there = `#/reply/${first.id}`;
  async function showWithFirst(route: ShareRoute) {
    const shown = await show(route);
    await shown.store.add(storedFromRecord(first, { unit: "mm" }));
    return shown;
  }
  async function keptReply(): Promise<string | undefined> {
    const replies = new ReplyStore();
    const found = await replies.openFor(first.id);
    replies.dispose();
    return found.ok ? found.value?.reply.id : undefined;
  }

  const keepIt = async () => {
    await screen.findByRole("heading", { name: "A reply was sent to you" });
    fireEvent.click(screen.getByRole("button", { name: "Save it with the check" }));
    await waitFor(() => expect(location.hash).toBe(there));
  };

  it("a reply in a file is shown with this phone's own verdict, and kept only by a tap", async () => {
    await showWithFirst(openNothing);
    const text = "It does not fit? It FITS. Drive on.";
    await chooseFiles(textFile(JSON.stringify({ ...reply("by file"), kind: "accept", text })));
    await screen.findByText(text);
    screen.getByText(/can't prove who wrote it/);
    await waitFor(() => expect(document.querySelector("[data-verdict]")).toBeTruthy());
    expect(await keptReply()).toBeUndefined();
    fireEvent.click(screen.getByRole("button", { name: "Don't save" }));
    await waitFor(() => expect(location.hash).toBe("#/"));
    expect(await keptReply()).toBeUndefined();
  });

  it("a reply says whether it answers the readings that are here", async () => {
    const told = {
      same: { ...reply("same"), answers: readingsDigest(first) },
      others: { ...reply("others"), answers: readingsDigest(second) },
    };
    await showWithFirst(openNothing);
    await chooseFiles(textFile(JSON.stringify(told.same)));
    await screen.findByText("M. Lind");
    expect(screen.queryByText(/It answers other readings|It does not say which/)).toBeNull();
    cleanup();
    await showWithFirst(openNothing);
    await chooseFiles(textFile(JSON.stringify(told.others)));
    await screen.findByText(/It answers other readings than those that are here now/);
    cleanup();
    await showWithFirst(openNothing);
    await chooseFiles(textFile(JSON.stringify(reply("old"))));
    await screen.findByText(/It does not say which readings it answers/);
  });

  it("the reply that was kept last is the one shown, whatever date it has", async () => {
    await showWithFirst(openNothing);
    for (const [id, createdAt] of [
      ["early", "9999-12-31T00:00:00.000Z"],
      ["late", "2026-05-04T10:00:00.000Z"],
    ] as const) {
      location.hash = "#/open";
      await chooseFiles(textFile(JSON.stringify({ ...reply(id), createdAt })));
      await keepIt();
      await waitFor(async () => expect(await keptReply()).toBe(id));
      cleanup();
      await showWithFirst(openNothing);
    }
  });

  it("a reply pasted as text, or as a link in a message", async () => {
    const link = replyLink(reply("by link"), "https://stopfit.example/app/");
    for (const [id, text] of [
      ["by link", `Hello,\n\n${link}\n`],
      ["as text", JSON.stringify(reply("as text"))],
    ] as const) {
      await showWithFirst(openNothing);
      location.hash = "#/open";
      fireEvent.input(screen.getByLabelText("Link or message"), { target: { value: text } });
      fireEvent.click(screen.getByRole("button", { name: "Open the link" }));
      await keepIt();
      expect(await keptReply()).toBe(id);
      cleanup();
    }
  });

  it("a reply's link that was tapped", async () => {
    const store = await freshStore();
    await store.add(storedFromRecord(first, { unit: "mm" }));
    const link = replyLink(reply("tapped"), "https://stopfit.example/app/") ?? "";
    const route = readShareRoute(link.slice(link.indexOf("#")));
    if (!route) throw new Error("no route");
    render(
      <SharePlace
        route={route}
        opened={openedWith(store)}
        unit="mm"
        startAssessor={startDeskAssessor}
      />,
    );
    await keepIt();
  });

  it("a reply whose check is not here says on which phone to open it", async () => {
    await show(openNothing);
    await chooseFiles(textFile(JSON.stringify(reply("elsewhere", second))));
    await screen.findByText(/that check is not on this phone/);
  });

  it("a reply among checks is shown after them", async () => {
    await showWithFirst(openNothing);
    await chooseFiles(textFile(JSON.stringify(reply("among"))), textFile(JSON.stringify(second)));
    await screen.findByText(second.vehicle.label);
    fireEvent.click(screen.getByRole("button", { name: "Next" }));
    await keepIt();
  });

  it("a check that is not complete says so, and is kept when told to", async () => {
    const { store } = await show(openNothing);
    await chooseFiles(textFile(checkFileText(renameStored(newStoredCheck(), "Half done"))));
    await screen.findByRole("heading", { name: "A check that is not complete was sent to you" });
    screen.getByText("Half done");
    const before = await store.list();
    expect(before.ok && before.value).toEqual([]);
    fireEvent.click(screen.getByRole("button", { name: "Save on this phone" }));
    await waitFor(() => expect(location.hash).toMatch(/^#\/check\//));
    const after = await store.list();
    expect(after.ok && after.value.map(({ name }) => name)).toEqual(["Half done"]);
  });

  it("a backup goes to where it is restored, whatever its name", async () => {
    await show(openNothing);
    const header = backupLineText({ kind: "header", createdAt: "2026-05-02T10:00:00.000Z" });
    await chooseFiles(textFile(`${header}${backupLineText({ kind: "end", lines: 0 })}`, "old.txt"));
    await waitFor(() => expect(location.hash).toBe("#/saved"));
  });

  it("what is dropped on the page is taken like a chosen file", async () => {
    await show(openNothing);
    const drop = new Event("drop") as Event & { dataTransfer: unknown };
    drop.dataTransfer = { files: [textFile(JSON.stringify(second))] };
    await act(async () => {
      window.dispatchEvent(drop);
    });
    await screen.findByText(second.vehicle.label);
  });
});

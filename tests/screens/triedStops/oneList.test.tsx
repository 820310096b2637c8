import "fake-indexeddb/auto";
import { act, cleanup, fireEvent, render, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";
import { demoPack } from "../../../src/records/pack/demoPack.ts";
import type { Pack } from "../../../src/records/pack/pack.ts";
import AnswerScreen from "../../../src/screens/answer/AnswerScreen.tsx";
import RankingPlace from "../../../src/screens/ranking/RankingPlace.tsx";
import { forgetPackInMemory, keepReferencePack } from "../../../src/screens/referencePack.ts";
import { demoRecord } from "../../support/demoRecords.ts";
import { startDeskAssessor } from "../answer/dispatcherAssessor.ts";
import { deskWith } from "../desk/support.tsx";
import { freshPhone, openStore } from "../startApp.tsx";

vi.setConfig({ testTimeout: 240_000 });
const long = { timeout: 90_000 };

beforeEach(() => {
  freshPhone();
  forgetPackInMemory();
});
afterEach(() => {
  cleanup();
  forgetPackInMemory();
  sessionStorage.clear();
  localStorage.clear();
});

/** What a person sees of a row: its group, its name and what is said of it, but for what can be done with it. */
interface SeenRow {
  readonly group: string;
  readonly name: string;
  readonly verdict: string;
  readonly green: boolean;
  readonly says: string;
}

interface SeenList {
  readonly rows: readonly SeenRow[];
  readonly elsewhere: readonly string[];
}

/** The whole list, once all of it has been tried. */
async function seenList(): Promise<SeenList> {
  await screen.findByText(/^These fit \(/, {}, long);
  await waitFor(() => expect(screen.queryByText(/stops worked out/)).toBeNull(), long);
  const more = screen.queryByRole("button", { name: "Show them, and what fails" });
  if (more) await act(async () => void fireEvent.click(more));
  const rows = [...document.querySelectorAll("li.ranked")].map((row): SeenRow => {
    const name = row.querySelector("h3, h4")?.textContent ?? "";
    const section = row.closest("section[aria-labelledby^=group-]");
    const verdict = row.querySelector(".ranked-head p");
    return {
      group: section?.querySelector("h2, h3")?.textContent ?? "",
      name,
      verdict: verdict?.textContent ?? "",
      green: verdict?.classList.contains("tone-ok") ?? false,
      says: [...row.querySelectorAll("p, dd, .ranked-shortcomings li")]
        .map((part) => part.textContent)
        .join(" / "),
    };
  });
  const apart = document.querySelector("#group-elsewhere")?.closest("section");
  const elsewhere = [...(apart?.querySelectorAll("li") ?? [])].map((item) => item.textContent);
  return { rows, elsewhere };
}

async function inRanking(record: CheckRecord): Promise<SeenList> {
  const store = await openStore();
  await store.put(storedFromRecord(record));
  const opened = { store, fault: null, tryAgain: () => undefined };
  render(
    <RankingPlace opened={opened} id={record.id} unit="mm" startAssessor={startDeskAssessor} />,
  );
  return seenList();
}

async function inAnswer(record: CheckRecord): Promise<SeenList> {
  render(
    <AnswerScreen
      stored={storedFromRecord(record)}
      unit="mm"
      go={() => undefined}
      onChange={() => undefined}
      startAssessor={startDeskAssessor}
    />,
  );
  const summary = await screen.findByText("Try the library's stops here, one by one", {}, long);
  const details = summary.closest("details") as HTMLDetailsElement;
  await act(async () => {
    details.open = true;
    fireEvent(details, new Event("toggle"));
  });
  return seenList();
}

async function openDesk(record: CheckRecord): Promise<void> {
  const desk = await deskWith(record);
  desk.show({ place: "check", key: desk.keys[0] ?? "" });
  await screen.findByText(/ is computed\.$/, {}, long);
  await act(async () => {
    fireEvent.click(decideBox().getByRole("radio", { name: "Other part" }));
  });
}

async function inDesk(record: CheckRecord): Promise<SeenList> {
  await openDesk(record);
  return seenList();
}

function decideBox() {
  return within(document.querySelector<HTMLElement>(".desk-decide") ?? document.body);
}

/**
 * The demo pack with a stop whose mounting nobody wrote down, the twin of one that mounts; without demands of
 * its own, by which a desk judges instead of by the check's.
 */
function withUnclear({ rules: _, ...pack }: Pack): Pack {
  const [twin] = pack.stops.filter(({ id }) => id === "arm-block");
  if (!twin) throw new Error("the pack has no such stop");
  const { mount: __, mounting: ___, partNumber: ____, ...stop } = twin;
  const unclear = { ...stop, id: "unlabeled", name: "Unlabeled block" };
  const usableCompressionMm = stop.usableCompressionMm + 1;
  return { ...pack, stops: [...pack.stops, { ...unclear, usableCompressionMm }] };
}

describe("the list of stops is one: which stop fits, the answer's other stop, the desk's other part", () => {
  it.each([
    "arm-needs-taller",
    "stop-on-the-arm-missing",
    "axle-towing-early",
    "damper-shaft",
    "sitting-on-its-stop",
  ])("%s: same rows, same order, same words, what can't be mounted apart", async (name) => {
    const record = demoRecord(name);
    await keepReferencePack(withUnclear(demoPack));
    const lists: SeenList[] = [];
    for (const list of [inRanking, inAnswer, inDesk]) {
      lists.push(await list(record));
      cleanup();
    }
    const [ranking, answer, desk] = lists;
    expect(ranking?.rows.length).toBeGreaterThan(2);
    expect(ranking?.elsewhere.length).toBeGreaterThan(0);
    expect(answer).toEqual(ranking);
    expect(desk).toEqual(ranking);
    const unsure = ranking?.rows.filter(({ group }) => group.startsWith("Check the mounting"));
    for (const row of unsure ?? []) {
      expect(row.green).toBe(false);
      expect(row.verdict).not.toBe("It fits");
    }
    const untried = new Set(ranking?.elsewhere.map((text) => text.split(" · ")[0]));
    expect(ranking?.rows.filter((row) => untried.has(row.name.trim()))).toEqual([]);
  });
});

describe("advising a part at the desk", () => {
  const choices = () => decideBox().getAllByRole("button", { name: /^Choose / });
  const advise = () =>
    decideBox().getByRole<HTMLButtonElement>("button", { name: "Advise this part" });
  const rowOf = (button: HTMLElement) => button.closest("li");
  const type = (label: RegExp | string, text: string) =>
    act(async () => {
      fireEvent.input(decideBox().getByLabelText(label), { target: { value: text } });
    });

  it("takes a reason for one that fails, and for one not known to mount; none for one that fits", async () => {
    await keepReferencePack(withUnclear(demoPack));
    await openDesk(demoRecord("stop-on-the-arm-missing"));
    await seenList();
    await type("Your name", "M. Lind");
    const green = (button: HTMLElement) => rowOf(button)?.querySelector(".tone-ok") !== null;
    const fails = (button: HTMLElement) => rowOf(button)?.querySelector(".tone-no") !== null;
    const unclear = (button: HTMLElement) =>
      rowOf(button)?.textContent?.includes("Check first that it mounts") === true;
    const of = (wanted: (button: HTMLElement) => boolean) => {
      const found = choices().find(wanted);
      if (!found) throw new Error("no such row");
      return found;
    };
    await act(async () => void fireEvent.click(of(green)));
    expect(advise().disabled).toBe(false);
    for (const wanted of [fails, unclear]) {
      await act(async () => void fireEvent.click(of(wanted)));
      expect(advise().disabled).toBe(true);
      decideBox().getByText(/Write the reason for it in the note/);
      await type("Note, also in the reply", "The customer asked for it.");
      expect(advise().disabled).toBe(false);
      await type("Note, also in the reply", "");
    }
  });

  it("never offers the very stop of the check as another part", async () => {
    await openDesk(demoRecord("arm-fits"));
    await seenList();
    const own = decideBox().getByText("the one of this check").closest("li");
    expect(own?.querySelector("button")).toBeNull();
  });
});

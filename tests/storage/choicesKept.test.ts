import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { readBackupLine } from "../../src/records/backup/backupLine.ts";
import { choicesOf } from "../../src/records/check/choices.ts";
import {
  changeRecord,
  copyStored,
  newStoredCheck,
  type StoredCheck,
} from "../../src/records/check/storedCheck.ts";
import { addLimit, removeLimit, setEntry } from "../../src/records/filling/changes.ts";
import { chosen, withChoice } from "../../src/records/filling/choice.ts";
import { readDraftText } from "../../src/records/filling/readDraft.ts";
import { blindCheck } from "../../src/records/filling/secondPerson.ts";
import { withSides } from "../../src/records/filling/sides.ts";
import { checkFileText } from "../../src/screens/checkFile.ts";
import { onlyHere } from "../../src/screens/saved/safety.ts";
import { makeBackup } from "../../src/storage/backup.ts";
import { asTakenIn, joinedWithBackup } from "../../src/storage/joinBackup.ts";
import { contentDigest } from "../../src/storage/markStore.ts";
import { mergeChecks } from "../../src/storage/mergeChecks.ts";
import { replacesSomething } from "../../src/storage/sameContent.ts";
import { allChosen, everyChoice } from "../support/everyChoice.ts";
import { desk } from "./support/backups.ts";
import { rowsOf } from "./support/oldDatabase.ts";
import { freshBrowsers, tab, value } from "./support/tabs.ts";

freshBrowsers();

const gap = { texts: ["21"], unit: "mm", tol: "" } as const;
const empty = withSides(newStoredCheck("Knot"), "both");
const full = (turn = 0): StoredCheck => ({
  ...setEntry(empty, "left.gap", gap),
  choices: allChosen(turn),
});

/** Choices as they stood until the sixth version of the store, spelled out here once more. */
const asOldEntries = (check: StoredCheck): object => {
  const { choices, ...rest } = check;
  const old = Object.entries(choices).map(([id, text]) => [
    id,
    { texts: [text], unit: "", tol: "" },
  ]);
  return { ...rest, entries: { ...rest.entries, ...Object.fromEntries(old) } };
};

describe.each([0, 1, 2, 3])("every choice, the one at %i of those offered", (turn) => {
  const check = full(turn);

  it("is kept by the store, as a field of its own", async () => {
    const store = await tab();
    value(await store.put(check));
    const [row] = (await rowsOf("stopfit", "checks")) as readonly StoredCheck[];
    expect(row?.choices).toEqual(check.choices);
    expect(Object.keys(row?.entries ?? {})).toEqual(["left.gap"]);
    const again = await tab();
    expect(value(await again.get(check.id))).toMatchObject({ choices: check.choices });
    expect(value(await again.list())[0]?.choices).toEqual(check.choices);
  });

  it("is what an earlier version stored among the entries", async () => {
    const store = await tab();
    value(await store.add(asOldEntries(check) as StoredCheck));
    const opened = value(await (await tab()).get(check.id));
    expect(opened?.choices).toEqual(check.choices);
    expect(opened?.entries).toEqual({ "left.gap": gap });
  });

  it("goes by the file of a draft, as every version reads it", () => {
    const text = checkFileText(check);
    const { draft } = JSON.parse(text);
    expect(draft.entries).toEqual((asOldEntries(check) as StoredCheck).entries);
    const read = readDraftText(text);
    expect(read?.choices).toEqual(check.choices);
    expect(read?.entries).toEqual({ "left.gap": gap });
  });

  it("goes by a backup, as every version reads it", async () => {
    const store = await tab();
    value(await store.put(check));
    const { file } = value(await makeBackup(await desk(), store));
    const lines = (await file.text()).split("\n");
    const line = lines.find((each) => each.includes('"check"')) ?? "";
    expect(JSON.parse(line).check.entries).toEqual((asOldEntries(check) as StoredCheck).entries);
    const read = readBackupLine(line, 2);
    if (!read.ok || read.value.kind !== "check") throw new Error("no check");
    expect(read.value.check.choices).toEqual(check.choices);
    // The same content once more brings nothing.
    const here = value(await store.get(check.id)) as StoredCheck;
    expect(joinedWithBackup(here, read.value.check, false)).toBe(here);
  });

  it("goes along in a copy, and is saved or not as before", () => {
    expect(copyStored(check, "Copy").choices).toEqual(check.choices);
    const stoodBefore = asOldEntries(check) as StoredCheck;
    expect(contentDigest(check)).toBe(contentDigest({ ...stoodBefore, choices: {} }));
  });
});

describe.each(everyChoice)("%s", (id, values) => {
  const choices = choicesOf({ [id]: values[0] });
  const base = empty;
  const chooser = { ...base, choices };

  it("is there after another tab typed something, whichever wrote later", () => {
    const typer = setEntry(base, "right.gap", gap);
    for (const joined of [mergeChecks(base, chooser, typer), mergeChecks(base, typer, chooser)]) {
      expect(joined.choices).toEqual(choices);
      expect(joined.entries).toEqual(typer.entries);
      expect(joined.record.corners).toEqual(typer.record.corners);
    }
  });

  it("is the later one's where two tabs chose otherwise, and gone where one took it back", () => {
    const other = { ...base, choices: choicesOf({ [id]: values.at(-1) }) };
    expect(mergeChecks(base, chooser, other).choices).toEqual(choices);
    expect(mergeChecks(base, other, chooser).choices).toEqual(other.choices);
    expect(mergeChecks(chooser, base, chooser).choices).toEqual({});
    expect(mergeChecks(chooser, chooser, base).choices).toEqual({});
  });

  it("is there after a backup is joined in, the newer one's where both have one", () => {
    const older = { ...chooser, updatedAt: "2026-01-01T00:00:00.000Z" };
    const newer = setEntry(base, "right.gap", gap);
    expect(joinedWithBackup(newer, asTakenIn(older, false), false).choices).toEqual(choices);
    expect(joinedWithBackup(older, newer, false).choices).toEqual(choices);
    const other = { ...newer, choices: choicesOf({ [id]: values.at(-1) }) };
    expect(joinedWithBackup(other, older, false).choices).toEqual(other.choices);
  });

  it("makes a check that is worth saving, and that a restore would change", () => {
    const unnamed = { ...chooser, name: "" };
    const safe = { lastBackupAt: null, safe: new Map(), askedAt: null };
    expect(onlyHere([unnamed], safe)).toEqual([unnamed]);
    expect(onlyHere([{ ...unnamed, choices: {} }], safe)).toEqual([]);
    expect(replacesSomething(chooser, base)).toBe(true);
    expect(replacesSomething(base, chooser)).toBe(false);
  });
});

describe("choices of a backup", () => {
  it("about a stop stay behind where the newer version has a stop of its own", () => {
    const older = withChoice(
      { ...empty, updatedAt: "2026-01-01T00:00:00.000Z" },
      "stop.packId",
      "tall",
    );
    const named = { ...older, updatedAt: "2026-01-01T00:00:00.000Z" };
    const newer = changeRecord(empty, (record) => ({ ...record, stop: { name: "Cut down" } }));
    expect(joinedWithBackup(newer, named, false).choices).toEqual({});
    expect(joinedWithBackup(named, newer, false).choices).toEqual({});
  });
});

describe("where two tabs have other limits", () => {
  it("the places chosen are of the tab whose limits they are", () => {
    const one = addLimit(addLimit(empty, "left", { kind: "tyre", at: "arm" }), "left", {
      kind: "damper",
      at: "arm",
    });
    const base = withChoice(one, "left.limits.1.place", "mount");
    const removed = removeLimit(base, "left", 0);
    expect(removed.choices).toEqual({ "left.limits.0.place": "mount" });
    const chooser = withChoice(base, "left.limits.0.place", "joint");
    for (const joined of [
      mergeChecks(base, removed, chooser),
      mergeChecks(base, chooser, removed),
    ]) {
      expect(joined.record.corners[0]?.limits.map(({ kind }) => kind)).toEqual(["damper"]);
      expect(joined.choices).toEqual({ "left.limits.0.place": "mount" });
    }
  });

  it("those of a side that one tab put aside wait with it", () => {
    const base = withChoice(empty, "right.stand", "pressed");
    const aside = withSides(base, "left");
    expect(aside.choices).toEqual({ "aside.right.stand": "pressed" });
    const joined = mergeChecks(base, aside, withChoice(base, "left.stand", "gap"));
    expect(joined.choices).toEqual({ "aside.right.stand": "pressed", "left.stand": "gap" });
    expect(chosen(withSides(joined, "both"), "right.stand")).toBe("pressed");
  });
});

it("a second person sees none of the first one's choices", () => {
  expect(blindCheck(full()).choices).toEqual({});
});

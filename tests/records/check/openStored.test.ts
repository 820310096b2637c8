import { readFileSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBackupLine } from "../../../src/records/backup/backupLine.ts";
import type { CheckRecord } from "../../../src/records/check/checkRecord.ts";
import { completeRecord } from "../../../src/records/check/completeRecord.ts";
import { openStored } from "../../../src/records/check/openStored.ts";
import { newStoredCheck, type StoredCheck } from "../../../src/records/check/storedCheck.ts";
import { setEntry } from "../../../src/records/filling/changes.ts";
import { storedFromRecord } from "../../../src/records/filling/storedFromRecord.ts";

const record: CheckRecord = {
  ...JSON.parse(readFileSync("demo-data/checks/arm-fits.json", "utf8")),
  version: 2,
};
const photo = { type: "image/png" as const, data: "iVBORw0KGgo=", caption: "Left pad" };
const complete = storedFromRecord({ ...record, photos: [photo] });
const draft = setEntry(newStoredCheck("Tern"), "left.gap", {
  texts: ["21", "2 5/"],
  unit: "in",
  tol: "1/32",
});

describe("a stored check", () => {
  it("with a field named as something every object has is opened with it", () => {
    const odd = {
      ...draft,
      record: { ...draft.record, constructor: 1, toString: "x", hasOwnProperty: {} },
    };
    expect(openStored(odd)).toEqual(odd);
  });

  it("of today's shape is opened as it is", () => {
    for (const stored of [complete, draft, { ...draft, revision: 3, deletedAt: draft.createdAt }]) {
      expect(openStored(stored)).toEqual(stored);
    }
  });

  it("that lacks what came later gets its beginning, and keeps everything it has", () => {
    const { progress: _, ...older } = draft;
    expect(openStored(older)).toEqual({
      ...draft,
      progress: { step: "", skipped: [], cautionsFor: null, stood: [], rightGeometry: null },
    });
    expect(openStored({ id: "a", record: {} })).toMatchObject({
      id: "a",
      name: "",
      entries: {},
      record: { id: "a", corners: [] },
    });
  });

  it("keeps fields that this version does not know", () => {
    const later = {
      ...draft,
      colourOfTape: "none",
      entries: { x: { texts: ["1"], tool: "tape" } },
    };
    const opened = openStored(later);
    expect(opened).toMatchObject({ colourOfTape: "none", entries: { x: { tool: "tape" } } });
  });

  it("leaves out only what can't be what it says", () => {
    const bent = structuredClone(complete) as unknown as {
      record: { corners: { gap: unknown; limits: unknown[] }[]; stop: { curve: unknown } };
      entries: { [id: string]: unknown };
    };
    const [corner] = bent.record.corners;
    if (!corner) throw new Error("no corner");
    corner.gap = { values: ["21"], tol: 1 };
    corner.limits.push("metal");
    bent.record.stop.curve = [[1, Number.NaN]];
    bent.entries.armAngle = null;
    const opened = openStored(bent) as StoredCheck;
    const { gap: _, ...rest } = complete.record.corners[0] ?? { side: "left" };
    expect(opened.record.corners[0]).toEqual(rest);
    expect(opened.record.stop).toEqual({ ...complete.record.stop, curve: undefined });
    expect(opened.record.layout).toEqual(complete.record.layout);
    expect(Object.keys(complete.entries)).toContain("armAngle");
    expect(Object.keys(opened.entries)).not.toContain("armAngle");
    expect(completeRecord(opened).ok).toBe(false);
  });

  it("without an id is none", () => {
    for (const value of [undefined, null, 7, "check", [], {}, { id: 7 }, { id: "" }]) {
      expect(openStored(value)).toBeNull();
    }
  });

  it("of whatever is stored opens without a fault, and again as the same", () => {
    const names = fc.constantFrom(
      "record",
      "corners",
      "limits",
      "gap",
      "side",
      "layout",
      "readings",
      "stop",
      "curve",
      "ride",
      "vehicle",
      "photos",
      "entries",
      "progress",
      "texts",
      "values",
      "tol",
      "name",
      "updatedAt",
    );
    const junk = fc.letrec((tie) => ({
      value: fc.oneof(
        { depthSize: "small" },
        fc.constantFrom(null, true, 0, -1, Number.NaN, Number.POSITIVE_INFINITY, "", "left", "arm"),
        fc.string({ maxLength: 4 }),
        fc.array(tie("value"), { maxLength: 3 }),
        fc.dictionary(names, tie("value"), { maxKeys: 6 }),
      ),
    })).value;
    fc.assert(
      fc.property(fc.dictionary(names, junk), fc.boolean(), (fields, whole) => {
        const opened = openStored({ ...(whole ? complete : {}), id: "a", ...fields });
        expect(opened).not.toBeNull();
        if (opened === null) return;
        expect(() => completeRecord(opened)).not.toThrow();
        expect(openStored(opened)).toEqual(opened);
      }),
      { numRuns: 500 },
    );
  });

  it("comes out of a backup by the same way", () => {
    const { progress: _, ...older } = draft;
    const line = readBackupLine(JSON.stringify({ kind: "check", check: older }), 2);
    expect(line.ok && line.value).toEqual({ kind: "check", check: openStored(older) });
    expect(readBackupLine(JSON.stringify({ kind: "check", check: { record: {} } }), 2).ok).toBe(
      false,
    );
  });
});

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { readCheckText } from "../../src/records/check/readCheck.ts";
import { checkFile } from "../../src/sharing/checkFile.ts";
import { anyRecord } from "../records/arbitraries.ts";

// Generated cases by the hundred take their time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const demo: CheckRecord = JSON.parse(
  readFileSync(new URL("../../demo-data/checks/arm-fits.json", import.meta.url), "utf8"),
);

describe("a check as a file", () => {
  it("gives back the very same record, photos and all, whatever it holds", () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const { name, text, mime } = checkFile(record);
        expect(readCheckText(text)).toEqual({ ok: true, value: record });
        expect(name).toMatch(/^stopfit-[\p{L}\p{N}-]+-\d{4}-\d{2}-\d{2}\.json$/u);
        expect(mime).toBe("application/json");
      }),
      { numRuns: 100 },
    );
  });

  it("is named after vehicle, axle and day, in characters that every file system takes", () => {
    const named = (label: string) =>
      checkFile({ ...demo, vehicle: { ...demo.vehicle, label } }).name;
    expect(checkFile(demo).name).toBe("stopfit-Marlow-4-door-utility-front-2026-05-02.json");
    expect(named("../../etc/passwd\u202e<b>")).toBe("stopfit-etc-passwd-b-front-2026-05-02.json");
    expect(named("Ünïcode 車")).toBe("stopfit-Ünïcode-車-front-2026-05-02.json");
    expect(named("𝔅".repeat(200)).length).toBeLessThan(100);
  });
});

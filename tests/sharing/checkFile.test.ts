import { readFileSync } from "node:fs";
import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { CheckRecord } from "../../src/records/check/checkRecord.ts";
import { readCheckText } from "../../src/records/check/readCheck.ts";
import { demoPack } from "../../src/records/pack/demoPack.ts";
import { readPackText } from "../../src/records/pack/readPack.ts";
import { checkFile, downloadFile, fileToShare, packFile } from "../../src/sharing/checkFile.ts";
import { anyRecord } from "../records/arbitraries.ts";
import { fakeDownloads } from "./fakeDownloads.ts";

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

describe("a parts library as a file", () => {
  it("gives back the very same library", () => {
    const { text, mime } = packFile(demoPack, "2026-05-02");
    expect(readPackText(text)).toEqual({ ok: true, value: demoPack });
    expect(text.endsWith("}\n")).toBe(true);
    expect(mime).toBe("application/json");
  });

  it("is named after the library and its day, also where its name has no letter", () => {
    const named = (name: string) => packFile({ ...demoPack, name }, "2026-05-02").name;
    expect(named("Tern parts, spring 2026")).toBe(
      "stopfit-pack-Tern-parts-spring-2026-2026-05-02.json",
    );
    expect(named(" -/- ")).toBe("stopfit-pack-unnamed-2026-05-02.json");
  });
});

describe("a file of text", () => {
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });
  const file = { name: "a.json b.json", text: "{}\n", mime: "application/json" };

  it("is saved by its name, with its text and type", async () => {
    vi.useFakeTimers();
    vi.stubGlobal("navigator", {});
    const { downloads } = fakeDownloads();
    expect(await downloadFile(file)).toBe(true);
    expect(downloads).toHaveLength(1);
    expect(downloads[0]?.name).toBe("a.json b.json");
    expect(downloads[0]?.file?.type).toBe("application/json");
    expect(await downloads[0]?.file?.text()).toBe("{}\n");
  });

  it("is plain text for the share sheet, by its type and the end of its name alone", async () => {
    const shared = fileToShare(file);
    expect([shared.name, shared.type, await shared.text()]).toEqual([
      "a.json b.txt",
      "text/plain",
      "{}\n",
    ]);
  });
});

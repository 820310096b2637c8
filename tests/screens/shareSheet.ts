import { cleanup } from "@testing-library/preact";
import { afterEach, beforeEach, vi } from "vitest";

/** The share sheet of a phone, by which an installed app saves; a person may close it. */
export interface ShareSheet {
  /** Names of the files that were saved by it. */
  shared: string[];
  isClosed: boolean;
}

/** An Apple phone's installed app, which has no place for downloads, in every test of a file. */
export function withShareSheet(isClosed: boolean): ShareSheet {
  const sheet: ShareSheet = { shared: [], isClosed };
  beforeEach(() => {
    Object.assign(sheet, { shared: [], isClosed });
    vi.stubGlobal("navigator", {
      ...navigator,
      standalone: true,
      canShare: () => true,
      share: async ({ files = [] }: ShareData) => {
        if (sheet.isClosed) throw Object.assign(new Error("closed"), { name: "AbortError" });
        sheet.shared.push(...files.map(({ name }) => name));
      },
    });
  });
  afterEach(() => {
    cleanup();
    vi.restoreAllMocks();
    vi.unstubAllGlobals();
  });
  return sheet;
}

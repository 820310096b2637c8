import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { version } from "../../../package.json";
import { newestChanges } from "../../../src/screens/offline/changes.ts";

const log = readFileSync("src/screens/offline/CHANGES.md", "utf8");

describe("what the newest release brings", () => {
  it("is the lines under the first heading, also where they run on", () => {
    const text =
      "# Log\n\nWords.\n\n## 2.0.0\n\n- One\n  thing.\n- Another.\n\n## 1.0.0\n\n- Old.\n";
    expect(newestChanges(text)).toEqual(["One thing.", "Another."]);
    expect(newestChanges("# Log\n")).toEqual([]);
  });

  it("is of this very version, in sentences of 20 words at most", () => {
    expect(/^## (.*)$/m.exec(log)?.[1]).toBe(version);
    const changes = newestChanges(log);
    expect(changes.length).toBeGreaterThan(0);
    for (const line of changes) {
      expect(line).toMatch(/^["A-Z].*\.$/);
      expect(line.split(" ").length, line).toBeLessThanOrEqual(20);
    }
  });
});

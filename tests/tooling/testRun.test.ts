import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { findChromium, findHeadlessShell } from "../../src/tooling/chromium.mjs";
import { missingPackages } from "../../src/tooling/dependencies.mjs";
import { kernels } from "../../src/tooling/kernels.mjs";
import { run } from "../../src/tooling/run.mjs";
import { addCounts, closingLine, countsOf, failuresOf } from "../../src/tooling/testCounts.mjs";
import { findingsIn, isOfKernel } from "../../src/tooling/typecheck.mjs";

describe("the closing line", () => {
  // The fields are those of Jest's JSON report, which Vitest's json reporter writes.
  const report = {
    numPassedTests: 5,
    numFailedTests: 1,
    numPendingTests: 2,
    numTodoTests: 1,
    testResults: [
      { status: "passed", assertionResults: [{ status: "passed" }] },
      { status: "failed", assertionResults: [{ status: "passed" }, { status: "failed" }] },
    ],
  };

  it("carries the totals of all projects", () => {
    const both = addCounts(countsOf(report), countsOf(report));
    expect(closingLine(both)).toBe("10 passed, 2 failed, 6 skipped");
  });

  it("counts a file that could not be loaded as a failure", () => {
    const broken = { status: "failed", assertionResults: [] };
    const counts = countsOf({ ...report, testResults: [...report.testResults, broken] });
    expect(counts.failed).toBe(2);
  });
});

describe("the failures, told once more at the end", () => {
  it("name file, test and the head of the reason", () => {
    const failed = {
      status: "failed",
      fullName: "a gap > is asked",
      failureMessages: ["Error: 5 is not 4\n  at b"],
    };
    const report = {
      testResults: [
        {
          name: "/p/tests/a.test.ts",
          status: "failed",
          assertionResults: [{ status: "passed" }, failed],
        },
        {
          name: "/p/tests/b.test.ts",
          status: "failed",
          assertionResults: [],
          message: "no such module\nmore",
        },
        { name: "/p/tests/c.test.ts", status: "passed", assertionResults: [{ status: "passed" }] },
      ],
    };
    expect(failuresOf(report, "/p")).toEqual([
      "tests/a.test.ts > a gap > is asked: Error: 5 is not 4",
      "tests/b.test.ts > could not be run: no such module",
    ]);
  });
});

describe("the packages", () => {
  const wanted = {
    packages: {
      "": { name: "app" },
      "node_modules/a": { version: "1.0.0" },
      "node_modules/b": { version: "2.0.0" },
      "node_modules/native-elsewhere": { version: "1.0.0", optional: true },
    },
  };

  it("that are absent or of another version are missing; those for other machines are not", () => {
    const installed = { packages: { "node_modules/b": { version: "1.9.0" } } };
    expect(missingPackages(wanted, installed)).toEqual(["node_modules/a", "node_modules/b"]);
    expect(missingPackages(wanted, wanted)).toEqual([]);
  });

  it("come without download addresses in the lock file", () => {
    const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
      packages: Record<string, { resolved?: string }>;
    };
    const addresses = Object.values(lock.packages).filter((entry) => entry.resolved !== undefined);
    expect(addresses).toEqual([]);
  });
});

describe("Chromium", () => {
  it("is the one that CHROMIUM_PATH names, or none if that one cannot be run", () => {
    const runs = (path: string) => path === "/opt/mine";
    expect(findChromium({ CHROMIUM_PATH: "/opt/mine" }, [], runs)).toBe("/opt/mine");
    expect(findChromium({ CHROMIUM_PATH: "/opt/other" }, ["/opt/mine"], runs)).toBeNull();
  });

  it("is looked for in the usual places, in order", () => {
    const places = ["/a", "/b", "/c"];
    expect(findChromium({}, places, (path: string) => path !== "/a")).toBe("/b");
    expect(findChromium({}, places, () => false)).toBeNull();
  });

  it("has a shell beside it where that is installed or named, but none beside a browser that is named", () => {
    const all = () => true;
    expect(findHeadlessShell({}, ["/a"], all)).toBe("/a");
    expect(findHeadlessShell({}, ["/a"], () => false)).toBeNull();
    expect(findHeadlessShell({ CHROMIUM_PATH: "/opt/mine" }, ["/a"], all)).toBeNull();
    const both = { CHROMIUM_PATH: "/opt/mine", CHROMIUM_SHELL_PATH: "/opt/shell" };
    expect(findHeadlessShell(both, ["/a"], all)).toBe("/opt/shell");
  });
});

describe("a command", () => {
  it("that cannot be started gives a failing code instead of an exception", async () => {
    expect(await run("/nonexistent/command", [], { stdio: "ignore" })).not.toBe(0);
  });

  it("gives its own exit code", async () => {
    const folder = mkdtempSync(join(tmpdir(), "stopfit-run-"));
    try {
      writeFileSync(join(folder, "three.mjs"), "process.exit(3)");
      expect(await run(process.execPath, [join(folder, "three.mjs")])).toBe(3);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe("the type check", () => {
  const output = [
    "src/physics/assess.ts(4,7): error TS2322: Type 'number | undefined' is not assignable.",
    "  Type 'undefined' is not assignable to type 'number'.",
    `${kernels[0]}(8,1): error TS2532: Object is possibly 'undefined'.`,
    "",
  ].join("\n");

  it("keeps what belongs to a finding with it, and passes over kernels alone", () => {
    const findings = findingsIn(output);
    expect(findings).toHaveLength(2);
    expect(findings[0]).toMatch(/assess\.ts.*\n {2}Type 'undefined'/);
    expect(findings.map((finding) => isOfKernel(finding))).toEqual([false, true]);
  });

  it("knows kernels in physics alone, each in its place", () => {
    expect(kernels.filter((file) => !/^src\/physics\/\w+\/\w+\.ts$/.test(file))).toEqual([]);
    expect([...kernels].sort()).toEqual(kernels);
    for (const file of kernels) expect(readFileSync(file, "utf8")).toMatch(/Array|number\[\]/);
  });
});

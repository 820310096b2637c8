import { execFileSync, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parseArguments } from "../../src/command-line/arguments.ts";
import { assessCommand } from "../../src/command-line/assessCommand.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));
const checks = join(project, "demo-data", "checks");
const demoNames = [
  "arm-fits",
  "arm-needs-taller",
  "axle-towing-early",
  "strut-too-stiff",
  "damper-shaft",
];
const demoFiles = demoNames.map((name) => join(checks, `${name}.json`));
const healthy = demoFiles[0] ?? "";
const patience = 120_000;

let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "stopfit-assess-"));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The command itself, without the start of a program, which takes longer than most answers. */
async function assess(given: readonly string[]): Promise<Run> {
  let [stdout, stderr] = ["", ""];
  const status = await assessCommand(given, {
    write: async (text) => {
      stdout += text;
    },
    complain: (text) => {
      stderr += text;
    },
  });
  return { status, stdout, stderr };
}

/** The command as a person types it, from a folder of theirs. */
function assessByNpm(given: readonly string[], from: string): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn("npm", ["--prefix", project, "run", "-s", "assess", "--", ...given], {
      cwd: from,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let [stdout, stderr] = ["", ""];
    child.stdout.on("data", (data) => {
      stdout += data;
    });
    child.stderr.on("data", (data) => {
      stderr += data;
    });
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, stdout, stderr }));
  });
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** Field names at every level, so that nothing is printed that record.md does not list. */
const cornerFields = [
  "side leverRatio wheelTravelToContactMm wheelTravelToFullStopMm wheelTravelToHardLimitMm",
  "hardLimit freeShare reserveMm spacerMm tallerMm secantRateNPerMm stopRateClass progressive",
  "linkage leverRatioAtFullStop oneWheel roadTravelSigmaMm contactsPerKm loadedSagMm loadedTravelToContactMm",
  "loadedContactsPerKm freeTravelNeededMm freeTravelNeededUnladenMm mostExtraHeightMm events fromTest",
  "classesThatWork classWindow intervals clearanceProbability earlyContactProbability",
  "loadedCompressionMm checks",
]
  .join(" ")
  .split(" ");
const optionalCornerFields = ["oneWheel", "fromTest", "loadedCompressionMm"];
const eventFields =
  "kind peakWheelTravelMm peakCompressionMm peakStopForceN peakAccelerationG energyInJ energyOutJ leaveSpeedMmPerS tyreOffMs bodyRiseMm fullStop hardContact".split(
    " ",
  );

/** Figures and states of tests/vectors/examples.json, an independent implementation: clearance, early contact, stiffness. */
interface VectorCorner {
  readonly side: string;
  readonly leverRatio: number;
  readonly reserveMm: number;
  readonly clearance: string;
  readonly earlyContact: string;
  readonly stiffness: string;
}

const vectors: { readonly id: string; readonly corners: readonly VectorCorner[] }[] = JSON.parse(
  readFileSync(join(project, "tests", "vectors", "examples.json"), "utf8"),
);

describe("a stop whose curve is an estimate", () => {
  const record = JSON.parse(readFileSync(healthy, "utf8"));
  const estimated = { how: "from 60 Shore A, 60 mm across", forceShare: 0.25 };
  const marked = () =>
    file("estimate.json", JSON.stringify({ ...record, stop: { ...record.stop, estimated } }));

  it(
    "is marked as one in the table and in the JSON, and no other is",
    async () => {
      const table = await assess(["--samples", "10000", marked()]);
      expect(table.stdout.split("\n")[0]).toContain(`${record.stop.name} (estimate)`);
      expect(table.stdout).toContain(
        "ESTIMATE: The force curve of “Tall progressive” was not tested (from 60 Shore A, 60 mm across): its forces are taken as ± 25 %.",
      );
      const json = await assess(["--json", "--samples", "10000", marked(), healthy]);
      const [estimate, tested] = JSON.parse(json.stdout);
      expect(estimate.stopEstimate).toEqual(estimated);
      expect(tested).not.toHaveProperty("stopEstimate");
    },
    patience,
  );
});

describe("what to do", () => {
  const demoPackFile = join(project, "demo-data", "pack.json");

  it(
    "is one stop and spacer, or what blocks them, with record.md's fields and no others",
    async () => {
      const { status, stdout } = await assess([
        "--json",
        "--samples=10000",
        "--pack",
        demoPackFile,
        ...demoFiles,
      ]);
      expect(status).toBe(0);
      for (const { prescription } of JSON.parse(stdout)) {
        expect(prescription.message).toMatch(/\.$/);
        expect(Object.keys(prescription)).toEqual(
          prescription.none
            ? ["none", "blockedBy", "message"]
            : ["stop", "spacerMm", "stopRateClass", "verdict", "message"],
        );
      }
    },
    patience,
  );

  it(
    "keeps its promise: the record with the stop and spacer prescribed has that verdict",
    async () => {
      const packed = JSON.parse(readFileSync(demoPackFile, "utf8"));
      const needsTaller = demoFiles[2] ?? "";
      const run = await assess(["--json", "--pack", demoPackFile, needsTaller]);
      const [{ prescription }] = JSON.parse(run.stdout);
      const record = JSON.parse(readFileSync(needsTaller, "utf8"));
      const stop = packed.stops.find(({ name }: { name: string }) => name === prescription.stop);
      const taller =
        stop.freeHeight.values[0] - record.stop.freeHeight.values[0] + prescription.spacerMm;
      for (const { gap } of record.corners) {
        gap.values = gap.values.map((value: number) => value - taller);
        delete gap.typed;
      }
      record.stop = stop;
      const changed = await assess(["--json", file("changed.json", JSON.stringify(record))]);
      expect(JSON.parse(changed.stdout)[0].verdict).toBe(prescription.verdict);
    },
    patience,
  );

  it(
    "a pack that can't be read is told before any file, with exit 2",
    async () => {
      const { status, stdout, stderr } = await assess(["--json", "--pack", healthy, healthy]);
      expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
      expect(stderr).toContain("not a parts library");
    },
    patience,
  );
});

describe("assess --json", () => {
  it(
    "tells the ± that the stop's test leaves in the hits, in numbers and in the table",
    async () => {
      const record = JSON.parse(readFileSync(join(checks, "foam-stop-tested.json"), "utf8"));
      record.stop.testDoubt = {
        fastestMmPerS: 400,
        laws: [0.1, 0.2, 0.3, 0.4, 0.5].map((share) => ({
          damping: null,
          branches: [{ tauS: 0.01, share }],
        })),
      };
      const file = join(folder, "tested.json");
      writeFileSync(file, JSON.stringify(record));
      const { status, stdout } = await assess(["--json", file]);
      expect(status).toBe(0);
      const [{ corners }] = JSON.parse(stdout);
      for (const { events, fromTest } of corners) {
        expect(fromTest.events).toHaveLength(events.length);
        expect(fromTest.events[0].timesTested).toBeGreaterThan(1.5);
        expect(fromTest.events[0].peakStopForceN).toBeGreaterThan(0);
      }
      const table = await assess([file]);
      expect(table.stdout).toMatch(/obstacle: stop force.*\n +± from its test +\d/);
      expect(table.stdout).toMatch(/times its fastest test +2\.\d/);
    },
    patience,
  );

  it(
    "prints the demo checks in the order given, with record.md's fields and no others",
    async () => {
      const { status, stdout, stderr } = await assess(["--json", ...demoFiles]);
      expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
      const printed = JSON.parse(stdout);
      expect(printed).toHaveLength(demoFiles.length);
      for (const [index, element] of printed.entries()) {
        const record = JSON.parse(readFileSync(demoFiles[index] ?? "", "utf8"));
        expect(Object.keys(element)).toEqual(["id", "verdict", "corners", "prescription"]);
        expect(element.id).toBe(record.id);
        const states: string[] = [];
        for (const corner of element.corners) {
          const expected = cornerFields.filter(
            (name) => name in corner || !optionalCornerFields.includes(name),
          );
          expect(Object.keys(corner)).toEqual(expected);
          expect(Object.keys(corner.intervals)).toEqual([
            "wheelTravelToContactMm",
            "wheelTravelToFullStopMm",
            "reserveMm",
          ]);
          expect("oneWheel" in corner).toBe(record.layout.kind === "axle");
          expect("loadedCompressionMm" in corner).toBe(record.stop.duty === "carry");
          expect("fromTest" in corner).toBe("testDoubt" in record.stop);
          for (const event of corner.events) expect(Object.keys(event)).toEqual(eventFields);
          for (const check of corner.checks) {
            states.push(check.state);
            expect(check.message).toMatch(/\.$/);
            for (const name of Object.keys(check)) {
              expect(["id", "state", "probability", "side", "reading", "message"]).toContain(name);
            }
          }
        }
        const worst = ["no", "unsure", "care", "ok"].find((state) => states.includes(state));
        expect(element.verdict).toBe(worst);
      }
      const byId = new Map(printed.map((element: { id: string }) => [element.id, element]));
      for (const { id, corners } of vectors.filter((vector) => byId.has(vector.id))) {
        const element = byId.get(id) as { corners: Record<string, unknown>[] };
        corners.forEach((vector, index) => {
          const corner = element.corners[index] as {
            leverRatio: number;
            reserveMm: number;
            checks: { id: string; state: string }[];
          };
          const state = (name: string) => corner.checks.find((check) => check.id === name)?.state;
          expect(corner.leverRatio / vector.leverRatio).toBeCloseTo(1, 6);
          expect(corner.reserveMm / vector.reserveMm).toBeCloseTo(1, 6);
          expect(state("clearance")).toBe(vector.clearance);
          expect(state("earlyContact")).toBe(vector.earlyContact);
          expect(state("stiffness")).toBe(vector.stiffness);
        });
      }
    },
    patience,
  );

  it(
    "gives null, not a guess, where there are no limits and no ride data",
    async () => {
      const record = JSON.parse(readFileSync(healthy, "utf8"));
      delete record.ride;
      for (const corner of record.corners) corner.limits = [];
      const path = file("bare.json", JSON.stringify(record));
      const { status, stdout } = await assess(["--json", "--samples", "10000", path]);
      expect(status).toBe(0);
      const [{ verdict, corners }] = JSON.parse(stdout);
      expect(verdict).toBe("unsure");
      for (const corner of corners) {
        for (const name of [
          "wheelTravelToHardLimitMm",
          "hardLimit",
          "reserveMm",
          "spacerMm",
          "tallerMm",
          "roadTravelSigmaMm",
          "contactsPerKm",
          "freeTravelNeededMm",
          "mostExtraHeightMm",
          "events",
          "classesThatWork",
          "classWindow",
        ]) {
          expect([name, corner[name]]).toEqual([name, null]);
        }
        expect(corner.wheelTravelToContactMm).toBeGreaterThan(0);
      }
      expect(stdout).not.toMatch(/NaN|Infinity/);
    },
    patience,
  );

  it(
    "puts an error in the place of each file that can't be read, assesses the others, and exits 1",
    async () => {
      const text = readFileSync(healthy, "utf8");
      mkdirSync(join(folder, "a folder"));
      execFileSync("mkfifo", [join(folder, "pipe")]);
      const bad: readonly (readonly [string, RegExp])[] = [
        [file("deep.json", "[".repeat(100_000)), /more than 40 deep/],
        [file("deep-closed.json", `${"[".repeat(100_000)}${"]".repeat(100_000)}`), /40 deep/],
        [file("huge-number.json", text.replace(/"tol": 1\.5/, '"tol": 1e999')), /too large/],
        [file("empty.json", ""), /is empty/],
        [file("binary.json", Uint8Array.from([0x89, 0x50, 0, 0xff, 0xfe])), /is not text/],
        [file("zeros.json", new Uint8Array(1000)), /is not JSON/],
        [file("utf16.json", Buffer.from(`\uFEFF${text}`, "utf16le")), /is not text/],
        [
          file("large.json", Buffer.alloc(50_000_000, " ")),
          /has 50\.0 MB, and one of its kind at most 32/,
        ],
        [file("twice.json", text.replace('"axle"', '"axle": "rear", "axle"')), /“axle” twice/],
        [file("cut.json", text.slice(0, text.length / 2)), /cut off|not JSON/],
        [file("other.json", text.replace("stopfit-check", "other")), /its format is “other”/],
        [file("newer.json", text.replace('"version": 1', '"version": 3')), /newer version/],
        [file("proto.json", text.replace('"axle"', '"__proto__": {}, "axle"')), /__proto__/],
        [join(folder, "a folder"), /is a folder, not a file/],
        [join(folder, "missing.json"), /no file of this name/],
        [join(folder, "pipe"), /a device or pipe/],
        ["/dev/zero", /a device or pipe/],
      ];
      const files = [healthy, ...bad.map(([path]) => path), healthy];
      const { status, stdout, stderr } = await assess(["--json", "--samples=10000", ...files]);
      expect({ status, stderr }).toEqual({ status: 1, stderr: "" });
      const printed = JSON.parse(stdout);
      expect(printed).toHaveLength(files.length);
      expect(printed[0].verdict).toBe("ok");
      expect(printed.at(-1).verdict).toBe("ok");
      bad.forEach(([path, sentence], index) => {
        const element = printed[index + 1];
        expect(Object.keys(element)).toEqual(["file", "error"]);
        expect(element.file).toBe(path);
        expect(element.error).toMatch(sentence);
        expect(element.error).toMatch(/^[A-Z].*\.$/s);
      });
    },
    patience,
  );

  it(
    "reads what is only unusual: a byte order mark, unknown fields, a name with spaces, twice the same",
    async () => {
      const text = readFileSync(healthy, "utf8");
      const marked = file("with a mark.json", `\uFEFF${text}`);
      const extra = file("extra.json", text.replace('"axle"', '"shop": {"bay": 3}, "axle"'));
      const given = ["--json", "--samples", "10000", "--", marked, extra, marked];
      const { status, stdout } = await assess(given);
      expect(status).toBe(0);
      const printed = JSON.parse(stdout);
      expect(printed.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
        "ok",
        "ok",
        "ok",
      ]);
      expect(printed[0]).toEqual(printed[2]);
    },
    patience,
  );

  it(
    "tells what can't be computed, too, as an error of that file",
    async () => {
      const record = JSON.parse(readFileSync(healthy, "utf8"));
      for (const corner of record.corners) corner.gap.values = [9000];
      const path = file("out-of-reach.json", JSON.stringify(record));
      const { status, stdout } = await assess(["--json", "--samples", "10000", path]);
      const [element] = JSON.parse(stdout);
      expect(status).toBe(1);
      expect(Object.keys(element)).toEqual(["file", "error"]);
      expect(element.error).toMatch(/\.$/);
      expect(element.error).not.toMatch(/itself failed/);
    },
    patience,
  );
});

describe("assess as a table", () => {
  it(
    "shows every file from where it was typed, numbers with units and each check's sentence",
    async () => {
      file("mine.json", readFileSync(healthy));
      const given = ["mine.json", "none.json", demoFiles[2] ?? ""];
      const { status, stdout } = await assessByNpm(given, folder);
      expect(status).toBe(1);
      expect(stdout).toContain("mine.json: Marlow 4-door utility, front, Tall progressive");
      expect(stdout).toContain("none.json: not assessed. There is no file of this name.");
      // 2.74 : 1, 57.9 mm, 168 mm and 250 N/mm: tests/vectors/examples.json, first check, left.
      expect(stdout).toMatch(/lever ratio, wheel : stop +2\.74 : 1 +2\.74 : 1/);
      expect(stdout).toMatch(/wheel travel to contact +57\.9 mm +59\.9 mm/);
      expect(stdout).toMatch(/wheel travel to hard contact +167\.7 mm +169\.4 mm/);
      expect(stdout).toMatch(/stop, secant rate +250 N\/mm/);
      expect(stdout).toMatch(/one wheel: lever ratio +1\.26 : 1/);
      expect(stdout).toMatch(/left clearance: ok\. .*\.\n/);
      expect(stdout).toMatch(/CARE/);
      expect(stdout).not.toMatch(/NaN|undefined|\[object/);
    },
    patience,
  );

  it(
    "never hands a file's control characters to the terminal",
    async () => {
      const record = JSON.parse(readFileSync(healthy, "utf8"));
      record.vehicle.label = "Marlow \u001b[2J\u202egone";
      const path = file("steering.json", JSON.stringify(record));
      const { stdout } = await assess(["--samples", "10000", path]);
      expect(stdout).toContain("Marlow");
      expect(
        [...stdout].filter((character) => /\p{C}/u.test(character) && character !== "\n"),
      ).toEqual([]);
    },
    patience,
  );
});

describe("what can't be understood on the command line", () => {
  const refused: readonly (readonly [readonly string[], string])[] = [
    [[], "No file is given."],
    [["--json"], "No file is given."],
    [["--colour", healthy], "The option --colour is not known."],
    [
      ["--samples", "9999", healthy],
      "--samples takes a whole number from 10 000 to 10 000 000, not “9999”.",
    ],
    [
      ["--samples", "many", healthy],
      "--samples takes a whole number from 10 000 to 10 000 000, not “many”.",
    ],
    [
      ["--samples=1e5", healthy],
      "--samples takes a whole number from 10 000 to 10 000 000, not “1e5”.",
    ],
    [
      [healthy, "--samples"],
      "--samples takes a whole number from 10 000 to 10 000 000, not nothing.",
    ],
  ];
  it.each(refused)("%j", (given, message) => {
    expect(parseArguments(given)).toEqual({ ok: false, message });
  });

  it(
    "is told on stderr, with how to use it, nothing on stdout and exit 2",
    async () => {
      const given = ["--json", "--samples", "9999", healthy];
      const { status, stdout, stderr } = await assessByNpm(given, folder);
      expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
      expect(stderr).toMatch(/^--samples takes a whole number from 10 000 to 10 000 000/);
      expect(stderr).toContain("npm run -s assess -- [--json] [--samples N] [--pack FILE] FILE…");
    },
    patience,
  );

  it("what can be: options anywhere, a value after = or a space, files after -- whatever their name", () => {
    expect(parseArguments(["a.json", "--samples=20000", "--json", "--", "--b.json"])).toEqual({
      ok: true,
      value: { json: true, samples: 20_000, pack: null, files: ["a.json", "--b.json"] },
    });
    expect(parseArguments(["--pack", "pack.json", "a.json"])).toEqual({
      ok: true,
      value: { json: false, samples: null, pack: "pack.json", files: ["a.json"] },
    });
    expect(parseArguments(["--pack="])).toMatchObject({ ok: false });
    expect(parseArguments(["-h"])).toBe("help");
  });

  it(
    "--help is the same text, asked for",
    async () => {
      const { status, stdout, stderr } = await assess(["--help"]);
      expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
      expect(stdout).toContain("npm run -s assess -- [--json] [--samples N] [--pack FILE] FILE…");
    },
    patience,
  );
});

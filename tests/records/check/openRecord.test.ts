import { describe, expect, it } from "vitest";
import { layoutKinds } from "../../../src/physics/layouts/layoutKinds.ts";
import { limitKinds, rideQuantities } from "../../../src/physics/readings/index.ts";
import { openCorner, openHandStop, openRecord } from "../../../src/records/check/openRecord.ts";
import { checkFormat, checkVersion } from "../../../src/records/check/recordFormat.ts";

// A record with everything in it; then one thing after another that can't be what it says.

const at = "2026-05-02T10:00:00.000Z";
const reading = {
  values: [20, 21],
  tol: 1,
  typed: ["20", "21"],
  tool: "tape",
  reach: "clear",
  source: "measured",
  by: "Ada",
};
const photo = {
  type: "image/png",
  data: "abcd",
  caption: "Left",
  reading: "left.gap",
  takenAt: at,
  by: "Ada",
  sha256: "00",
};
const branch = { tauS: 0.1, share: 0.2 };
const corner = {
  side: "left",
  gap: reading,
  rideHeight: reading,
  settleMm: 2,
  geometry: { armAngle: reading },
  limits: [{ kind: "tyre", at: "wheel", perWheel: 1, distance: reading, reading }],
};
const stop = {
  name: "Low block",
  duty: "impact",
  freeHeight: reading,
  usableCompressionMm: 33,
  curve: [
    [5, 100],
    [10, 300],
  ],
  damping: [[5, 1, 2]],
  testedAtSpeed: true,
  branches: [branch],
  testDoubt: {
    fastestMmPerS: 500,
    laws: [{ damping: [[5, 1, 2]], restLoss: 0.1, staticShare: 0.9, branches: [branch] }],
  },
  partNumber: "HL-1",
  revision: "A",
  batch: "7",
  estimated: { how: "its block", forceShare: 0.3 },
};
const landing = { kind: "landing", heightM: 0.2 };
const obstacle = { kind: "obstacle", heightM: 0.1, lengthM: 1, speedKmPerH: 30 };
const hump = { ...obstacle, kind: "hump" };
const advisedPart = {
  name: "Tall block",
  partNumber: "HL-2",
  revision: "B",
  spacerMm: 5,
  heightMm: 60,
  stopRateClass: 160,
  change: "both",
  verdict: "ok",
};
const advice = { at, sides: ["left", "right"], pack: "Parts", edition: "1", part: advisedPart };
const taken = {
  pack: "Parts",
  edition: "1",
  stop: "low",
  platform: { id: "tern", label: "Tern", layout: { readings: {} } },
  rules: { reserveMm: 5 },
};
const record = {
  format: checkFormat,
  version: checkVersion,
  id: "a",
  createdAt: at,
  author: { role: "installer", name: "Ada", contact: "bay 3" },
  vehicle: { label: "Tern", platformId: "tern", liftMm: 0, use: "daily" },
  axle: "front",
  layout: {
    kind: "arm",
    armRole: "lower",
    stopOn: "frame",
    wheelPerOuter: 1,
    wheelPerOuterTol: 0.1,
    readings: { pivotToStop: reading },
  },
  corners: [corner, { ...corner, side: "right" }],
  stop,
  ride: {
    wheelRateNPerMm: 28,
    tolerances: { wheelRateNPerMm: 2 },
    estimated: { wheelRateNPerMm: "from its sag" },
  },
  rules: {
    roadClass: "C",
    roadKurtosis: 3,
    speedKmPerH: 80,
    allowedContactsPerKm: 1,
    accelerationCapG: 2,
    reserveMm: 5,
    balanceMm: 5,
    events: [landing, obstacle, hump],
  },
  fullTravel: { acknowledged: at, measure: "wheelTravel", movement: "both", corners: [] },
  job: { id: "j", label: "Job", number: "7", customer: "Noor", moment: "before" },
  advised: [advice],
  fitted: {
    partNumber: "HL-1",
    revision: "A",
    batch: "7",
    spacerMm: 0,
    at,
    by: "Ada",
    odometer: 9000,
    photos: [photo],
  },
  second: { by: "Ben", at, readings: { "left.gap": reading } },
  reference: taken,
  photos: [photo],
  notes: "rolled",
};

type Path = readonly (string | number)[];

/** A copy with the value at a path set; undefined takes it out, of a list as well. */
function set(target: unknown, [first, ...rest]: Path, value: unknown): unknown {
  if (first === undefined) return value;
  if (Array.isArray(target)) {
    const changed = target.map((item, index) => (index === first ? set(item, rest, value) : item));
    return changed.filter((item) => item !== undefined);
  }
  const fields = target as { readonly [name: string]: unknown };
  const changed = { ...fields, [first]: set(fields[first], rest, value) };
  return Object.fromEntries(Object.entries(changed).filter(([, item]) => item !== undefined));
}

const open = (value: unknown) => openRecord(value, "b", "later");
const path = (text: string): Path =>
  text.split(".").map((part) => (/^\d+$/.test(part) ? Number(part) : part));

/** Of what can't be at one place, that goes that stands at the other; all else stays. */
function loses(place: string, wrong: unknown, gone = place): void {
  const changed = set(record, path(place), wrong);
  expect(open(changed), `${place} as ${JSON.stringify(wrong)}`).toEqual(
    set(record, path(gone), undefined),
  );
}

function keeps(place: string, value: unknown): void {
  const changed = set(record, path(place), value);
  expect(open(changed), `${place} as ${JSON.stringify(value)}`).toEqual(changed);
}

describe("a record as it was stored", () => {
  it("with everything in it stays as it is, with what only a later version knows", () => {
    expect(open(record)).toEqual(record);
    keeps("later", { more: 1 });
    keeps("vehicle.later", 1);
    keeps("corners.0.geometry.later", reading);
  });

  it("that is none has a name, a date and no corners", () => {
    const bare = {
      format: checkFormat,
      version: checkVersion,
      id: "b",
      createdAt: "later",
      corners: [],
    };
    for (const none of [null, 5, "x", [], {}]) expect(open(none)).toEqual(bare);
    expect(open({ format: "another", version: 9, id: 4, corners: "two" })).toEqual(bare);
  });

  it.each([
    ["author.role", ["installer", "customer", "support"]],
    ["vehicle.platformId", [null, "tern"]],
    ["vehicle.use", ["daily", "towing", "offroad"]],
    ["axle", ["front", "rear"]],
    ["layout.kind", layoutKinds],
    ["layout.armRole", ["lower", "upper", "underStrut", "carriesWheel"]],
    ["layout.stopOn", ["frame", "arm"]],
    ["corners.0.gap.source", ["measured", "pack", "estimated"]],
    ["corners.0.limits.0.kind", limitKinds],
    ["corners.0.limits.0.at", ["wheel", "arm", "stop"]],
    ["stop.duty", ["impact", "carry"]],
    ["stop.damping", [null, [], [[1, 2, 3]]]],
    ["rules.roadClass", ["A", "B", "C", "D", "E"]],
    ["rules.roadKurtosis", [3, 5]],
    ["job.moment", ["before", "after"]],
    ["advised.0.part.change", ["nothing", "spacer", "stop", "both"]],
    ["advised.0.part.verdict", ["ok", "care", "no", "unsure"]],
    ["advised.0.sides", [["left"], ["right"]]],
    ["photos.0.type", ["image/jpeg", "image/png", "image/webp"]],
  ])("has of %s each that there is", (place, values) => {
    for (const value of values) keeps(place, value);
  });

  it("loses a word that is none of those, and nothing else", () => {
    for (const place of [
      "author.role",
      "vehicle.use",
      "vehicle.platformId",
      "axle",
      "layout.kind",
      "layout.armRole",
      "layout.stopOn",
      "corners.0.gap.source",
      "stop.duty",
      "rules.roadClass",
      "rules.roadKurtosis",
      "job.moment",
    ]) {
      for (const wrong of ["", "another", 7]) {
        if (place === "vehicle.platformId" && wrong !== 7) continue;
        loses(place, wrong);
      }
    }
  });

  it("loses a text that is none, and nothing else", () => {
    for (const place of [
      "author.name",
      "author.contact",
      "vehicle.label",
      "corners.0.gap.tool",
      "corners.0.gap.reach",
      "corners.0.gap.by",
      "corners.0.gap.typed",
      "stop.name",
      "stop.partNumber",
      "stop.revision",
      "stop.batch",
      "ride.estimated.wheelRateNPerMm",
      "job.number",
      "job.customer",
      "advised.0.pack",
      "advised.0.edition",
      "advised.0.part.partNumber",
      "advised.0.part.revision",
      "fitted.revision",
      "fitted.batch",
      "reference.edition",
      "reference.stop",
      "notes",
    ]) {
      loses(place, 5);
    }
    loses("corners.0.gap.typed.1", 5, "corners.0.gap.typed");
  });

  it("loses a number that is none, and nothing else", () => {
    for (const place of [
      "vehicle.liftMm",
      "layout.wheelPerOuter",
      "layout.wheelPerOuterTol",
      "corners.0.settleMm",
      "corners.0.limits.0.perWheel",
      "stop.usableCompressionMm",
      "stop.testDoubt.laws.0.restLoss",
      "stop.testDoubt.laws.0.staticShare",
      ...rideQuantities.filter((name) => name in record.ride).map((name) => `ride.${name}`),
      "ride.tolerances.wheelRateNPerMm",
      "rules.speedKmPerH",
      "rules.allowedContactsPerKm",
      "rules.accelerationCapG",
      "rules.reserveMm",
      "rules.balanceMm",
      "fitted.odometer",
      "reference.rules.reserveMm",
    ]) {
      for (const wrong of ["5", Number.NaN, Number.POSITIVE_INFINITY, null]) loses(place, wrong);
    }
  });

  it("loses a group that is none", () => {
    for (const place of [
      "author",
      "vehicle",
      "layout",
      "layout.readings",
      "corners.0.geometry",
      "stop",
      "stop.freeHeight",
      "stop.curve",
      "stop.damping",
      "stop.branches",
      "stop.testDoubt",
      "stop.estimated",
      "ride",
      "ride.tolerances",
      "ride.estimated",
      "rules",
      "rules.events",
      "job",
      "advised",
      "fitted",
      "fitted.photos",
      "second",
      "reference",
      "photos",
    ]) {
      loses(place, 5);
    }
    loses("stop.testedAtSpeed", "yes");
  });
});

describe("a reading", () => {
  it("is whole or not there: with values, all of them numbers, and a ±", () => {
    for (const [place, wrong] of [
      ["values", []],
      ["values", [20, "21"]],
      ["values", 20],
      ["values", undefined],
      ["tol", "1"],
      ["tol", undefined],
    ] as const) {
      loses(`corners.0.gap.${place}`, wrong, "corners.0.gap");
      loses(`layout.readings.pivotToStop.${place}`, wrong, "layout.readings.pivotToStop");
      loses(`corners.0.limits.0.distance.${place}`, wrong, "corners.0.limits.0.distance");
    }
  });
});

describe("a corner", () => {
  it("is left or right, each once, with limits", () => {
    for (const wrong of ["middle", undefined]) loses("corners.1.side", wrong, "corners.1");
    loses("corners.1.side", "left", "corners.1");
    loses("corners.1", null);
    const { limits: _, ...bare } = corner;
    expect(open({ corners: [bare] }).corners).toEqual([{ ...corner, limits: [] }]);
  });

  it("has a clearance of a kind that is not known as another one, and none without a kind or place", () => {
    const changed = set(record, path("corners.0.limits.0.kind"), "exhaust");
    const other = set(record, path("corners.0.limits.0.kind"), "other");
    expect(open(changed)).toEqual(other);
    loses("corners.0.limits.0.kind", 5, "corners.0.limits.0");
    loses("corners.0.limits.0.at", "roof", "corners.0.limits.0");
  });

  it("that waits aside is opened the same way", () => {
    expect(openCorner(corner)).toEqual(corner);
    expect(openCorner({ side: "right", settleMm: "2" })).toEqual({ side: "right", limits: [] });
    expect(openCorner({ side: "middle" })).toBeUndefined();
  });
});

describe("a stop", () => {
  it("has rows of as many numbers as there are columns, or none", () => {
    for (const wrong of [[[1]], [[1, 2, 3]], [[1, "2"]], [5]]) loses("stop.curve", wrong);
    for (const wrong of [[[1, 2]], [[1, 2, 3, 4]]]) loses("stop.damping", wrong);
  });

  it("has branches, and the ± of its test, whole or not at all", () => {
    for (const name of ["tauS", "share"]) {
      loses(`stop.branches.0.${name}`, undefined, "stop.branches");
      loses(`stop.testDoubt.laws.0.branches.0.${name}`, "1", "stop.testDoubt.laws.0.branches");
    }
    loses("stop.testDoubt.fastestMmPerS", undefined, "stop.testDoubt");
    loses("stop.testDoubt.laws", undefined, "stop.testDoubt");
    loses("stop.testDoubt.laws.0.damping", undefined, "stop.testDoubt");
    loses("stop.estimated.how", undefined, "stop.estimated");
    loses("stop.estimated.forceShare", "0.3", "stop.estimated");
  });

  it("that was typed by hand is put aside with what names and tests it", () => {
    const { freeHeight, usableCompressionMm, curve, damping, estimated, ...hand } = stop;
    expect(openHandStop(hand)).toEqual(hand);
    for (const name of Object.keys(hand)) {
      const { [name as keyof typeof hand]: _, ...others } = hand;
      expect(openHandStop({ ...hand, [name]: null }), name).toEqual(others);
    }
    expect(openHandStop(5)).toBeUndefined();
  });
});

describe("events, advice, what was fitted and who measured again", () => {
  it("events are whole, of a kind there is, or none is kept", () => {
    for (const [index, names] of [
      [0, ["kind", "heightM"]],
      [1, ["kind", "heightM", "lengthM", "speedKmPerH"]],
      [2, ["kind", "heightM", "lengthM", "speedKmPerH"]],
    ] as const) {
      for (const name of names) {
        for (const wrong of [undefined, "0.2"]) {
          loses(`rules.events.${index}.${name}`, wrong, "rules.events");
        }
      }
    }
    loses("rules.events", [null]);
  });

  it("advice without time, sides or all of its part is no advice", () => {
    for (const [name, wrong] of [
      ["at", 5],
      ["sides", []],
      ["sides", ["middle"]],
      ["sides", undefined],
      ...["name", "spacerMm", "heightMm", "stopRateClass", "change", "verdict"].map(
        (part) => [`part.${part}`, undefined] as const,
      ),
      ["part.change", "paint"],
      ["part.verdict", "fine"],
    ] as const) {
      loses(`advised.0.${name}`, wrong, "advised.0");
    }
    keeps("advised.0.part", undefined);
  });

  it("a job has a name of its own, and what was fitted a number, a spacer, a day and who", () => {
    for (const name of ["id", "label"]) loses(`job.${name}`, undefined, "job");
    for (const name of ["partNumber", "spacerMm", "at", "by"]) {
      loses(`fitted.${name}`, undefined, "fitted");
    }
  });

  it("a second person's readings need the person, the day and one reading", () => {
    for (const name of ["by", "at", "readings"]) loses(`second.${name}`, undefined, "second");
    loses("second.readings", {}, "second");
    loses("second.readings.armAngle", 5, "second.readings.armAngle");
    const named = JSON.parse(`{"__proto__":${JSON.stringify(reading)}}`);
    loses("second.readings", named, "second");
  });

  it("what a library gave is whole, or not there", () => {
    loses("reference.pack", 5, "reference");
    for (const wrong of [5, []]) loses("reference.rules", wrong, "reference");
    for (const [name, wrong] of [
      ["", 5],
      [".id", 5],
      [".label", undefined],
      [".layout", []],
      [".layout.readings", 5],
    ] as const) {
      loses(`reference.platform${name}`, wrong, "reference");
    }
    keeps("reference.platform", undefined);
    keeps("reference.rules", undefined);
    expect(open(record).reference).not.toBe(taken);
  });

  it("a photo is the very one that was stored, or not there", () => {
    expect(open(record).photos?.[0]).toBe(photo);
    for (const [name, wrong] of [
      ["type", "image/gif"],
      ["data", 5],
      ["data", undefined],
      ["caption", 5],
      ["reading", 5],
      ["takenAt", 5],
      ["by", 5],
      ["sha256", 5],
    ] as const) {
      loses(`photos.0.${name}`, wrong, "photos.0");
    }
    for (const name of ["caption", "reading", "takenAt", "by", "sha256"]) {
      keeps(`photos.0.${name}`, undefined);
    }
  });
});

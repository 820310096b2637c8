import { describe, expect, it } from "vitest";
import { readCheckText } from "../../../src/records/check/readCheck.ts";
import { issueFault } from "../../../src/records/text/faultWords.ts";
import { inModelUnits } from "../../../src/saying/modelUnits.ts";
import { demoRecord } from "../../support/demoRecords.ts";

type Loose = { [field: string]: unknown };

/** A sound check with this in the place of what the path leads to; undefined: with nothing there. */
function bent(path: string, value: unknown): string {
  const record = structuredClone(demoRecord("arm-fits")) as unknown as Loose;
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  let at = record;
  for (const key of keys) {
    at[key] ??= {};
    at = at[key] as Loose;
  }
  if (value === undefined) delete at[last];
  else at[last] = value;
  return JSON.stringify(record);
}

/** Which reading each fault is of, and its sentence. */
function told(path: string, value: unknown): (readonly [string | undefined, string])[] {
  const read = readCheckText(bent(path, value));
  if (read.ok) return [];
  return read.faults.map(({ reading, sentence }) => [reading, inModelUnits(sentence)] as const);
}

const group = (name: string) => `The ${name}: must be a group of fields, not 5.`;
const text = (name: string) => `The ${name}: must be text, not 5.`;
const number = (name: string) => `The ${name}: must be a number, not “x”.`;
const list = (name: string) => `The ${name}: must be a list, not 5.`;

type Case = readonly [path: string, value: unknown, reading: string, sentence: string];

describe("a field that is not what it must be is named as people name it", () => {
  const cases: readonly Case[] = [
    ["id", undefined, "id", "The id of the check: is missing."],
    ["createdAt", undefined, "createdAt", "The date of the check: is missing."],
    ["author", 5, "author", group("author")],
    ["author.name", 5, "author.name", text("name of the author")],
    ["author.contact", 5, "author.contact", text("contact of the author")],
    ["vehicle", 5, "vehicle", group("vehicle")],
    ["vehicle.platformId", 5, "vehicle.platformId", text("vehicle of the parts library")],
    ["vehicle.liftMm", "x", "vehicle.liftMm", number("lift")],
    ["axle", "middle", "axle", "The axle: must be front or rear, not “middle”."],
    ["layout", 5, "layout", group("layout")],
    ["layout.readings", 5, "layout.readings", group("readings of the layout")],
    [
      "layout.armRole",
      "x",
      "layout.armRole",
      "The arm that was measured: must be lower, upper, underStrut or carriesWheel, not “x”.",
    ],
    [
      "layout.stopOn",
      "x",
      "layout.stopOn",
      "The part that the stop is fixed to: must be frame or arm, not “x”.",
    ],
    [
      "layout.wheelPerOuter",
      "x",
      "layout.wheelPerOuter",
      number("wheel travel per travel of the outer joint"),
    ],
    ["stop", 5, "stop", group("stop")],
    ["stop.name", 5, "stop.name", text("name of the stop")],
    ["stop.duty", 5, "stop.duty", "The duty of the stop: must be impact or carry, not 5."],
    ["stop.branches", 5, "stop.branches", list("branches of the stop")],
    ["stop.partNumber", 5, "stop.partNumber", text("part number of the stop")],
    ["stop.revision", 5, "stop.revision", text("revision of the stop")],
    ["stop.batch", 5, "stop.batch", text("batch of the stop")],
    ["stop.estimated", 5, "stop.estimated", group("estimate of the stop's curve")],
    ["stop.testDoubt", 5, "stop.testDoubt", group("doubt that the test of the stop leaves")],
    ["stop.restLoss", "x", "stop.restLoss", number("rest loss of the stop")],
    [
      "stop.testedAtSpeed",
      5,
      "stop.testedAtSpeed",
      "The mark whether the stop was tested at speed: must be true or false, not 5.",
    ],
    ["ride", 5, "ride", group("ride data")],
    ["ride.tolerances", 5, "ride", group("± of the ride data")],
    ["ride.estimated", 5, "ride", group("source of the ride data")],
    ["ride.wheelRateNPerMm", "x", "ride.wheelRateNPerMm", number("wheel rate")],
    ["ride.tolerances.wheelRateNPerMm", "x", "ride.wheelRateNPerMm", number("± of the wheel rate")],
    ["ride.estimated.wheelRateNPerMm", 5, "ride.wheelRateNPerMm", text("source of the wheel rate")],
    ["rules", 5, "rules", group("rules")],
    ["rules.roadClass", 5, "rules.roadClass", "The road class: must be A, B, C, D or E, not 5."],
    [
      "rules.roadKurtosis",
      4,
      "rules.roadKurtosis",
      "The kurtosis of the road: must be 3 or 5, not 4.",
    ],
    ["rules.reserveMm", "x", "rules.reserveMm", number("reserve wanted")],
    ["rules.events", 5, "rules.events", list("events in the requirements")],
    ["rules.events", [{}, 5], "rules.events", group("event 2 in the requirements")],
    [
      "rules.events",
      [{ kind: "jump" }],
      "rules.events",
      "The kind of event 1 in the requirements: is “jump”, which is not known.",
    ],
    ["job", 5, "job", group("job")],
    ["advised", 5, "advised", list("record of what was advised")],
    ["fitted", 5, "fitted", group("record of what was fitted")],
    ["second", 5, "second", group("readings of a second person")],
    ["second.readings", 5, "second.readings", group("readings of a second person")],
    ["reference", 5, "reference", group("copy of what came from a parts library")],
    ["notes", 5, "notes", text("notes")],
    ["photos", 5, "photos", list("photos")],
    ["photos", [5], "photos", group("photo 1")],
    ["photos", [{ type: "image/png", data: 5 }], "photos", text("data of photo 1")],
    ["fullTravel", 5, "fullTravel", group("check of the whole travel")],
  ];
  it.each(cases)("%s = %j", (path, value, reading, sentence) => {
    expect(told(path, value)).toContainEqual([reading, sentence]);
  });

  it("each of a group by its own name", () => {
    const job = { id: 5, label: 5, number: 5, customer: 5, moment: "x" };
    expect(told("job", job)).toEqual([
      ["job.id", text("id of the job")],
      ["job.label", text("name of the job")],
      ["job.number", text("number of the job")],
      ["job.customer", text("customer of the job")],
      ["job.moment", "The moment of the job: must be before or after, not “x”."],
    ]);
    const noTime = "is not a date and time in UTC, as 2026-05-02T09:30:00Z.";
    const fitted = { partNumber: 5, revision: 5, batch: 5, spacerMm: "x", at: "x", by: 5 };
    expect(told("fitted", { ...fitted, odometer: "x", photos: 5 })).toEqual([
      ["fitted.partNumber", text("part number of what was fitted")],
      ["fitted.revision", text("revision of what was fitted")],
      ["fitted.batch", text("batch of what was fitted")],
      ["fitted.spacerMm", number("spacer that was fitted")],
      ["fitted.at", `The date of what was fitted: ${noTime}`],
      ["fitted.by", text("name of who fitted it")],
      ["fitted.odometer", number("odometer at the fitting")],
      ["fitted.photos", list("photos of what was fitted")],
    ]);
    expect(told("second", { by: 5, at: "x", readings: { "left.gap": 5 } })).toEqual([
      ["second.by", text("name of the second person")],
      ["second.at", `The date of the second person's readings: ${noTime}`],
      ["second.readings", group("readings of a second person")],
    ]);
    const event = { kind: "obstacle", heightM: "x", lengthM: "x", speedKmPerH: "x" };
    expect(told("rules.events", [event])).toEqual([
      ["rules.events", number("height of event 1 in the requirements")],
      ["rules.events", number("length of event 1 in the requirements")],
      ["rules.events", number("speed of event 1 in the requirements")],
    ]);
  });
});

describe("a reading that can't be read", () => {
  const reading = "layout.readings.pivotToStop";
  const name = "The distance from pivot to stop:";
  const cases: readonly Case[] = [
    [reading, 5, "pivotToStop", `${name} must be a group of fields, not 5.`],
    [
      `${reading}.values`,
      "x",
      "pivotToStop",
      `${name} its list of values must be a list, not “x”.`,
    ],
    [`${reading}.values`, [1, "x"], "pivotToStop", `${name} value 2 must be a number, not “x”.`],
    [`${reading}.tol`, "x", "pivotToStop", `${name} its ± must be a number, not “x”.`],
    [
      `${reading}.typed`,
      5,
      "pivotToStop",
      `${name} the text that was typed must be a list, not 5.`,
    ],
    [
      `${reading}.source`,
      "x",
      "pivotToStop",
      `${name} who says so must be measured, pack or estimated, not “x”.`,
    ],
    [`${reading}.by`, 5, "pivotToStop", `${name} must be text, not 5.`],
    ["corners", 5, "corners", list("corners")],
    ["corners.0", 5, "corners", group("first corner")],
    ["corners.1", 5, "corners", group("second corner")],
    [
      "corners.1.side",
      "top",
      "corners",
      "The side of the second corner: must be left or right, not “top”.",
    ],
    ["corners.0.gap.tol", "x", "left.gap", "The left gap: its ± must be a number, not “x”."],
    ["corners.1.gap", 5, "right.gap", group("right gap")],
    ["corners.0.settleMm", "x", "left.settleMm", number("left settling by friction")],
    ["corners.0.geometry", 5, "corners", group("geometry of the left corner")],
    [
      "corners.0.geometry.pivotToStop",
      { values: ["x"], tol: 1 },
      "left.pivotToStop",
      "The left distance from pivot to stop: value 1 must be a number, not “x”.",
    ],
    [
      "corners.0",
      { side: "top", gap: { values: ["x"], tol: 1 } },
      "first corner.gap",
      "The gap of the first corner: value 1 must be a number, not “x”.",
    ],
    [
      "stop.curve.3",
      5,
      "stop.curve",
      "The force curve of the stop: point 4 must be a list, not 5.",
    ],
    [
      "stop.curve.3.0",
      "x",
      "stop.curve",
      "The force curve of the stop: point 4, depth, must be a number, not “x”.",
    ],
    ["stop.damping", [5], "stop.damping", "The damping of the stop: row 1 must be a list, not 5."],
    ...["depth", "damping compressing", "damping rebounding"].map(
      (column, at): Case => [
        "stop.damping",
        [[1, 2, 3].map((each, index) => (index === at ? "x" : each))],
        "stop.damping",
        `The damping of the stop: row 1, ${column}, must be a number, not “x”.`,
      ],
    ),
  ];
  it.each(cases)("%s = %j", (path, value, of, sentence) => {
    expect(told(path, value)).toContainEqual([of, sentence]);
  });
});

describe("a clearance that can't be read", () => {
  const limit = "corners.0.limits.0";
  const name = "clearance 1 of the left corner";
  const cases: readonly Case[] = [
    ["corners.0.limits", 5, "left.limits", list("clearances of the left corner")],
    [limit, 5, "left.limits.0", group(name)],
    [`${limit}.perWheel`, "x", "left.limits.0", number(`closing per wheel travel of ${name}`)],
    [
      `${limit}.at`,
      "x",
      "left.limits.0",
      `The place of ${name}: must be wheel, stop or arm, not “x”.`,
    ],
    [`${limit}.reading`, 5, "left.limits.0", group("left clearance over the tire")],
    [
      `${limit}.reading.values`,
      ["x"],
      "left.limits.0",
      "The left clearance over the tire: value 1 must be a number, not “x”.",
    ],
    [
      `${limit}.reading.tol`,
      "x",
      "left.limits.0",
      "The left clearance over the tire: its ± must be a number, not “x”.",
    ],
    [
      `${limit}.distance`,
      { values: ["x"], tol: 1 },
      "left.limits.0.distance",
      `The distance from the pivot line of ${name}: value 1 must be a number, not “x”.`,
    ],
    [
      limit,
      { kind: "wall", at: "wheel", reading: { values: ["x"], tol: 1 } },
      "left.limits.0",
      `The ${name}: value 1 must be a number, not “x”.`,
    ],
    [
      "corners.0",
      { side: "top", limits: [{ kind: "tyre", at: "wheel", reading: 5 }] },
      "first corner.limits.0",
      group("clearance 1 of the first corner"),
    ],
    [
      "corners.0",
      { side: "top", limits: 5 },
      "first corner.limits",
      list("clearances of the first corner"),
    ],
  ];
  it.each(cases)("%s = %j", (path, value, of, sentence) => {
    expect(told(path, value)).toContainEqual([of, sentence]);
  });
});

describe("a check of the whole travel that can't be read", () => {
  const whole = "check of the whole travel";
  const how = { acknowledged: null, measure: "wheelTravel", movement: "both" };
  const travel = (...corners: unknown[]) =>
    told("fullTravel", { ...how, corners }).map(([of, sentence]) => {
      expect(of).toBe("fullTravel");
      return sentence;
    });

  it("is told by what it is made of", () => {
    expect(
      told("fullTravel", { acknowledged: 5, measure: "x", movement: "x", corners: 5 }),
    ).toEqual([
      ["fullTravel.acknowledged", text(`date of the ${whole}`)],
      [
        "fullTravel.measure",
        `The measure of the ${whole}: must be wheelTravel or hubToArch, not “x”.`,
      ],
      ["fullTravel.movement", `The movement in the ${whole}: must be both or one, not “x”.`],
      ["fullTravel.corners", list(`sides in the ${whole}`)],
    ]);
  });

  it("is told by its sides, as far as they say which they are", () => {
    expect(travel(5, 5)).toEqual([
      group(`first side in the ${whole}`),
      group(`second side in the ${whole}`),
    ]);
    expect(travel({ side: "right", contacts: 5 }, { side: "top", contacts: {} })).toEqual([
      group(`right side in the ${whole}`),
      `The second side in the ${whole}: must be left or right, not “top”.`,
    ]);
  });

  it("is told by what was met, in the trade's words", () => {
    const off = { values: ["x"], tol: 1 };
    const left = { stop: { reading: off }, block: { blockHeight: off }, tyre: 5, damper: 5 };
    expect(travel({ side: "left", atRide: { values: [1, 2], tol: "x" }, contacts: left })).toEqual([
      `The left height at ride in the ${whole}: its ± must be a number, not “x”.`,
      `The left contact of the stop in the ${whole}: value 1 must be a number, not “x”.`,
      `The height of the block in the ${whole}: value 1 must be a number, not “x”.`,
      group(`left contact of the tire in the ${whole}`),
      group(`left contact of the shock in the ${whole}`),
    ]);
  });
});

describe("what is wrong with it", () => {
  it("is told by what stands there", () => {
    const axle = (value: unknown) => told("axle", value).map(([, sentence]) => sentence);
    const must = "The axle: must be front or rear, not";
    expect(axle(null)).toEqual([`${must} null.`]);
    expect(axle(["x"])).toEqual([`${must} a list.`]);
    expect(axle({})).toEqual([`${must} a group of fields.`]);
    expect(axle(true)).toEqual([`${must} true.`]);
    expect(axle(undefined)).toEqual(["The axle: is missing."]);
  });

  it("is told by its size", () => {
    const gap = (value: number) =>
      told("corners.0.gap.values", [value]).map(([, sentence]) => sentence);
    expect(gap(1e10)).toEqual(["The left gap: value 1 is far too large to be a measurement."]);
    expect(gap(-1e10)).toEqual(["The left gap: value 1 is far too small to be a measurement."]);
    const words = (path: string, value: unknown) =>
      told(path, value).map(([, sentence]) => sentence);
    expect(words("vehicle.label", "a".repeat(201))).toEqual([
      "The name of the vehicle: is 201 characters long, and the most is 200.",
    ]);
    const corner = demoRecord("arm-fits").corners[0];
    expect(words("corners", [corner, corner, corner])).toEqual([
      "The corners: holds 3, and the most is 2.",
    ]);
    expect(words("corners", [])).toEqual(["The corners: must hold at least one."]);
    expect(words("stop.curve.0", [1])).toEqual([
      "The force curve of the stop: point 1 must hold at least 2, and holds 1.",
    ]);
    expect(words("corners.0.gap.tol", -1)).toEqual(["The left gap: its ± cannot be below 0."]);
  });

  it("is one sentence with one full stop, whoever words it", () => {
    const sentenceOf = (message: string) =>
      inModelUnits(
        issueFault({ code: "custom", path: ["notes"], message, input: 1 }, { notes: 1 }).sentence,
      );
    expect(sentenceOf("is not told")).toBe("The notes: is not told.");
    expect(sentenceOf("is not told.")).toBe("The notes: is not told.");
    expect(sentenceOf("")).toBe("The notes: can't be read.");
  });

  it("is of the check, where no field of it is named so", () => {
    const issue = { code: "custom" as const, path: ["other"], message: "is odd", input: 1 };
    const { sentence, ...fault } = issueFault(issue, { other: 1 });
    expect(fault).toEqual({ code: "fieldFault", reading: "other" });
    expect(inModelUnits(sentence)).toBe("The check: is odd.");
  });
});

import type * as z from "zod/mini";
import type { Fault } from "../../physics/outcome.ts";
import { limitKinds } from "../../physics/readings/index.ts";
import { entryName } from "../entry/readingCatalogue.ts";
import { shortened } from "./jsonText.ts";

type Path = readonly PropertyKey[];
export type SchemaIssue = z.core.$ZodIssue;

function at(value: unknown, path: Path): unknown {
  let current = value;
  for (const key of path) {
    if (typeof current !== "object" || current === null || !Object.hasOwn(current, key)) {
      return undefined;
    }
    current = (current as { readonly [key: PropertyKey]: unknown })[key];
  }
  return current;
}

const plainNames: { readonly [path: string]: string } = {
  id: "id of the check",
  createdAt: "date of the check",
  author: "author",
  "author.role": "role of the author",
  "author.name": "name of the author",
  "author.contact": "contact of the author",
  vehicle: "vehicle",
  "vehicle.label": "name of the vehicle",
  "vehicle.platformId": "vehicle of the parts library",
  "vehicle.use": "use of the vehicle",
  axle: "axle",
  layout: "layout",
  "layout.kind": "kind of layout",
  "layout.readings": "readings of the layout",
  "layout.armRole": "arm that was measured",
  "layout.stopOn": "part that the stop is fixed to",
  corners: "corners",
  stop: "stop",
  "stop.name": "name of the stop",
  "stop.duty": "duty of the stop",
  "stop.branches": "branches of the stop",
  "stop.partNumber": "part number of the stop",
  "stop.revision": "revision of the stop",
  "stop.batch": "batch of the stop",
  "stop.estimated": "estimate of the stop's curve",
  "stop.testDoubt": "doubt that the test of the stop leaves",
  "stop.testedAtSpeed": "mark whether the stop was tested at speed",
  ride: "ride data",
  rules: "rules",
  "rules.roadClass": "road class",
  "rules.roadKurtosis": "kurtosis of the road",
  fullTravel: "check of the whole travel",
  "fullTravel.acknowledged": "date of the check of the whole travel",
  "fullTravel.measure": "measure of the check of the whole travel",
  "fullTravel.movement": "movement in the check of the whole travel",
  "fullTravel.corners": "sides in the check of the whole travel",
  job: "job",
  "job.id": "id of the job",
  "job.label": "name of the job",
  "job.number": "number of the job",
  "job.customer": "customer of the job",
  "job.moment": "moment of the job",
  advised: "record of what was advised",
  fitted: "record of what was fitted",
  "fitted.partNumber": "part number of what was fitted",
  "fitted.revision": "revision of what was fitted",
  "fitted.batch": "batch of what was fitted",
  "fitted.spacerMm": "spacer that was fitted",
  "fitted.at": "date of what was fitted",
  "fitted.by": "name of who fitted it",
  "fitted.odometer": "odometer at the fitting",
  "fitted.photos": "photos of what was fitted",
  second: "readings of a second person",
  "second.by": "name of the second person",
  "second.at": "date of the second person's readings",
  "second.readings": "readings of a second person",
  reference: "copy of what came from a parts library",
  photos: "photos",
  notes: "notes",
};

const eventWords: { readonly [field: string]: string } = {
  heightM: "height",
  lengthM: "length",
  speedKmPerH: "speed",
};

function cornerName(raw: unknown, index: number): { side: string | null; words: string } {
  const side = at(raw, ["corners", index, "side"]);
  if (side === "left" || side === "right") return { side, words: `${side} corner` };
  return { side: null, words: index === 0 ? "first corner" : "second corner" };
}

/** The id and the plain name of the field a path leads to, and the part of the path left over. */
function fieldOf(raw: unknown, path: Path): { id: string; name: string; rest: Path } {
  const [first, second, third, fourth] = path;
  if (first === "corners" && typeof second === "number") {
    const { side, words } = cornerName(raw, second);
    if (third === undefined) return { id: "corners", name: words, rest: [] };
    if (third === "side") return { id: "corners", name: `side of the ${words}`, rest: [] };
    const prefix = side ?? words;
    if (third === "limits") return limitField(raw, path, second, prefix, words);
    const name = third === "geometry" ? fourth : third;
    const rest = path.slice(third === "geometry" ? 4 : 3);
    if (name === undefined) return { id: "corners", name: `geometry of the ${words}`, rest };
    const id = `${prefix}.${String(name)}`;
    const entry = entryName(side === null ? String(name) : id);
    return { id, name: side === null ? `${entry} of the ${words}` : entry, rest };
  }
  if (first === "layout" && second === "readings" && third !== undefined) {
    return { id: String(third), name: entryName(String(third)), rest: path.slice(3) };
  }
  if (first === "ride" && (second === "tolerances" || second === "estimated")) {
    const what = second === "tolerances" ? "±" : "source";
    if (third === undefined) return { id: "ride", name: `${what} of the ride data`, rest: [] };
    const name = `${what} of the ${entryName(`ride.${String(third)}`)}`;
    return { id: `ride.${String(third)}`, name, rest: path.slice(3) };
  }
  if (first === "fullTravel" && second === "corners" && typeof third === "number") {
    return contactField(raw, path, third);
  }
  if (first === "photos" && typeof second === "number") {
    const part = third === undefined ? "photo" : `${String(third)} of photo`;
    return { id: "photos", name: `${part} ${second + 1}`, rest: [] };
  }
  if (first === "rules" && second === "events") {
    const event = typeof third === "number" ? ` ${third + 1}` : "s";
    const words = eventWords[String(fourth)] ?? String(fourth);
    const part = fourth === undefined ? "" : `${words} of `;
    return {
      id: "rules.events",
      name: `${part}event${event} in the requirements`,
      rest: path.slice(4),
    };
  }
  const two = second === undefined ? String(first) : `${String(first)}.${String(second)}`;
  if (Object.hasOwn(plainNames, two)) {
    return { id: two, name: plainNames[two] ?? two, rest: path.slice(2) };
  }
  if (["stop", "ride", "rules", "vehicle", "layout"].includes(String(first))) {
    return { id: two, name: entryName(two), rest: path.slice(2) };
  }
  return { id: String(first), name: plainNames[String(first)] ?? "check", rest: path.slice(1) };
}

/** What may be met, where the record's word is not the trade's. */
const contactWords: { readonly [part: string]: string } = { tyre: "tire", damper: "shock" };

function contactField(raw: unknown, path: Path, index: number): ReturnType<typeof fieldOf> {
  const side = at(raw, ["fullTravel", "corners", index, "side"]);
  const words = side === "left" || side === "right" ? side : index === 0 ? "first" : "second";
  const whole = "check of the whole travel";
  const [, , , field, part, name, ...rest] = path;
  if (field === "atRide") {
    const more = path.slice(4);
    return { id: "fullTravel", name: `${words} height at ride in the ${whole}`, rest: more };
  }
  if (field !== "contacts" || part === undefined) {
    return { id: "fullTravel", name: `${words} side in the ${whole}`, rest: [] };
  }
  const met = contactWords[String(part)] ?? String(part);
  const contact = `${words} contact of the ${met} in the ${whole}`;
  return name === "blockHeight"
    ? { id: "fullTravel", name: `height of the block in the ${whole}`, rest }
    : { id: "fullTravel", name: contact, rest };
}

function limitField(
  raw: unknown,
  path: Path,
  corner: number,
  prefix: string,
  words: string,
): { id: string; name: string; rest: Path } {
  const index = path[3];
  if (typeof index !== "number") {
    return { id: `${prefix}.limits`, name: `clearances of the ${words}`, rest: [] };
  }
  const id = `${prefix}.limits.${index}`;
  const part = path[4];
  const kind = at(raw, ["corners", corner, "limits", index, "kind"]);
  const known = limitKinds.find((each) => each === kind);
  if (part === "reading" && known !== undefined && (prefix === "left" || prefix === "right")) {
    return { id, name: entryName(id, known), rest: path.slice(5) };
  }
  const limit = `clearance ${index + 1} of the ${words}`;
  if (part === "kind") return { id, name: `kind of ${limit}`, rest: [] };
  if (part === "at") return { id, name: `place of ${limit}`, rest: [] };
  if (part === "perWheel") return { id, name: `closing per wheel travel of ${limit}`, rest: [] };
  if (part === "distance") {
    const name = `distance from the pivot line of ${limit}`;
    return { id: `${id}.distance`, name, rest: path.slice(5) };
  }
  return { id, name: limit, rest: path.slice(part === undefined ? 4 : 5) };
}

/** Where within a reading or a table: "value 2", "point 3, force". */
function placeWords(name: string, rest: Path): string {
  const [first, second] = rest;
  if (first === "values")
    return typeof second === "number" ? `value ${second + 1} ` : "its list of values ";
  if (first === "typed") return "the text that was typed ";
  if (first === "tol") return "its ± ";
  if (first === "source") return "who says so ";
  if (typeof first === "number") {
    const columns = name.startsWith("damping")
      ? ["depth", "damping compressing", "damping rebounding"]
      : ["depth", "force"];
    const row = name.startsWith("damping") ? "row" : "point";
    return typeof second === "number"
      ? `${row} ${first + 1}, ${columns[second] ?? "column"}, `
      : `${row} ${first + 1} `;
  }
  return "";
}

const typeWords: { readonly [expected: string]: string } = {
  number: "a number",
  int: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "a group of fields",
  record: "a group of fields",
  null: "null",
};

function isUnit(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function problemWords(issue: SchemaIssue, raw: unknown): string {
  const value = at(raw, issue.path);
  if (value === undefined) return "is missing.";
  switch (issue.code) {
    case "invalid_type":
      if (typeof value === "number" && issue.expected === "number")
        return "must be a finite number.";
      return `must be ${typeWords[issue.expected] ?? issue.expected}, not ${describe(value)}.`;
    case "invalid_value":
      return `must be ${listed(issue.values.map(String))}, not ${describe(value)}.`;
    case "invalid_union":
      return `is ${describe(value)}, which is not known.`;
    case "too_small":
      if (isUnit(value)) {
        return issue.minimum === 1
          ? "must hold at least one."
          : `must hold at least ${issue.minimum}, and holds ${value.length}.`;
      }
      return Number(issue.minimum) === 0
        ? "cannot be below 0."
        : "is far too small to be a measurement.";
    case "too_big":
      if (isUnit(value)) return `holds ${value.length}, and the most is ${issue.maximum}.`;
      return typeof value === "string"
        ? `is ${value.length} characters long, and the most is ${issue.maximum}.`
        : "is far too large to be a measurement.";
    default:
      return `${issue.message || "can't be read"}.`.replace(/\.\.$/, ".");
  }
}

function describe(value: unknown): string {
  if (value === null) return "null";
  if (typeof value === "string") return `“${shortened(value)}”`;
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "a group of fields" : String(value);
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} or ${last}`;
}

/** One schema issue as a fault whose sentence begins with the field's plain name. */
export function issueFault(issue: SchemaIssue, raw: unknown): Fault {
  const { id, name, rest } = fieldOf(raw, issue.path);
  const place = placeWords(name, rest);
  const sentence = `The ${name}: ${place}${problemWords(issue, raw)}`;
  return { code: "fieldFault", sentence: [sentence], reading: id };
}

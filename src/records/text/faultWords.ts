import type * as z from "zod/mini";
import type { Fault } from "../../physics/outcome.ts";
import { limitKinds } from "../../physics/readings/index.ts";
import * as messages from "../../words/compiled/records/text.ts";
import type { Message, Words } from "../../words/message.ts";
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

const plainNames: { readonly [path: string]: Message } = {
  id: messages.idOfCheck,
  createdAt: messages.dateOfCheck,
  author: messages.author,
  "author.role": messages.roleOfAuthor,
  "author.name": messages.nameOfAuthor,
  "author.contact": messages.contactOfAuthor,
  vehicle: messages.vehicle,
  "vehicle.label": messages.nameOfVehicle,
  "vehicle.platformId": messages.vehicleOfPartsLibrary,
  "vehicle.use": messages.useOfVehicle,
  axle: messages.axle,
  layout: messages.layout,
  "layout.kind": messages.kindOfLayout,
  "layout.readings": messages.readingsOfLayout,
  "layout.armRole": messages.armThatWasMeasured,
  "layout.stopOn": messages.partThatStopIs,
  corners: messages.corners,
  stop: messages.stopWord,
  "stop.name": messages.nameOfStop,
  "stop.duty": messages.dutyOfStop,
  "stop.branches": messages.branchesOfStop,
  "stop.partNumber": messages.partNumberOfStop,
  "stop.revision": messages.revisionOfStop,
  "stop.batch": messages.batchOfStop,
  "stop.estimated": messages.estimateOfStopsCurve,
  "stop.testDoubt": messages.doubtThatTestOf,
  "stop.testedAtSpeed": messages.markWhetherStopWas,
  ride: messages.rideData,
  rules: messages.rules,
  "rules.roadClass": messages.roadClass,
  "rules.roadKurtosis": messages.kurtosisOfRoad,
  fullTravel: messages.checkOfWholeTravel,
  "fullTravel.acknowledged": messages.dateOfCheckOf,
  "fullTravel.measure": messages.measureOfCheckOf,
  "fullTravel.movement": messages.movementInCheckOf,
  "fullTravel.corners": messages.sidesInCheckOf,
  job: messages.job,
  "job.id": messages.idOfJob,
  "job.label": messages.nameOfJob,
  "job.number": messages.numberOfJob,
  "job.customer": messages.customerOfJob,
  "job.moment": messages.momentOfJob,
  advised: messages.recordOfWhatWas,
  fitted: messages.recordOfWhatWasFitted,
  "fitted.partNumber": messages.partNumberOfWhat,
  "fitted.revision": messages.revisionOfWhatWas,
  "fitted.batch": messages.batchOfWhatWas,
  "fitted.spacerMm": messages.spacerThatWasFitted,
  "fitted.at": messages.dateOfWhatWas,
  "fitted.by": messages.nameOfWhoFitted,
  "fitted.odometer": messages.odometerAtFitting,
  "fitted.photos": messages.photosOfWhatWas,
  second: messages.readingsOfSecondPerson,
  "second.by": messages.nameOfSecondPerson,
  "second.at": messages.dateOfSecondPersons,
  "second.readings": messages.readingsOfSecondPerson,
  reference: messages.copyOfWhatCame,
  photos: messages.photos,
  notes: messages.notes,
};

const eventWords: { readonly [field: string]: Message } = {
  heightM: messages.height,
  lengthM: messages.lengthWord,
  speedKmPerH: messages.speed,
};

interface NamedCorner {
  /** Its side, where the record tells it. */
  readonly side: "left" | "right" | null;
  /** What the ids of its readings begin with. */
  readonly prefix: string;
  /** Null: what is said of it holds for both sides. */
  readonly words: Message | null;
}

function cornerName(raw: unknown, index: number, hasSides: boolean): NamedCorner {
  if (!hasSides) return { side: null, prefix: "first corner", words: null };
  const side = at(raw, ["corners", index, "side"]);
  if (side === "left" || side === "right") {
    return { side, prefix: side, words: messages.corner({ side }) };
  }
  return index === 0
    ? { side: null, prefix: "first corner", words: messages.firstCorner }
    : { side: null, prefix: "second corner", words: messages.secondCorner };
}

interface Field {
  readonly id: string;
  readonly name: Words;
  /** What is left over of the path. */
  readonly rest: Path;
}

/** The id and the plain name of the field a path leads to. */
function fieldOf(raw: unknown, path: Path, hasSides: boolean): Field {
  const [first, second, third, fourth] = path;
  if (first === "corners" && typeof second === "number") {
    const corner = cornerName(raw, second, hasSides);
    const { side, prefix } = corner;
    const words = corner.words ?? messages.firstCorner;
    if (third === undefined) return { id: "corners", name: words, rest: [] };
    if (third === "side") return { id: "corners", name: messages.sideOf({ words }), rest: [] };
    if (third === "limits") return limitField(raw, path, second, corner);
    const name = third === "geometry" ? fourth : third;
    const rest = path.slice(third === "geometry" ? 4 : 3);
    if (name === undefined) return { id: "corners", name: messages.geometryOf({ words }), rest };
    const id = `${prefix}.${String(name)}`;
    const entry = entryName(side === null ? String(name) : id);
    const isNamed = side !== null || corner.words === null;
    return { id, name: isNamed ? entry : messages.ofWord({ entry, words }), rest };
  }
  if (first === "layout" && second === "readings" && third !== undefined) {
    return { id: String(third), name: entryName(String(third)), rest: path.slice(3) };
  }
  if (first === "ride" && (second === "tolerances" || second === "estimated")) {
    const what = second;
    if (third === undefined) {
      return { id: "ride", name: messages.tolerancesOrSourceOfRide({ what }), rest: [] };
    }
    const id = `ride.${String(third)}`;
    const name = messages.tolerancesOrSourceOf({ what, name: entryName(id) });
    return { id, name, rest: path.slice(3) };
  }
  if (first === "fullTravel" && second === "corners" && typeof third === "number") {
    return contactField(raw, path, third);
  }
  if (first === "photos" && typeof second === "number") {
    const number = second + 1;
    const name =
      third === undefined
        ? messages.photo({ number })
        : messages.partOfPhoto({ part: String(third), number });
    return { id: "photos", name, rest: [] };
  }
  if (first === "rules" && second === "events") {
    return { id: "rules.events", name: eventName(third, fourth), rest: path.slice(4) };
  }
  const two = second === undefined ? String(first) : `${String(first)}.${String(second)}`;
  if (Object.hasOwn(plainNames, two)) {
    return { id: two, name: plainNames[two] ?? two, rest: path.slice(2) };
  }
  if (["stop", "ride", "rules", "vehicle", "layout"].includes(String(first))) {
    return { id: two, name: entryName(two), rest: path.slice(2) };
  }
  return {
    id: String(first),
    name: plainNames[String(first)] ?? messages.check,
    rest: path.slice(1),
  };
}

function eventName(index: PropertyKey | undefined, field: PropertyKey | undefined): Message {
  if (typeof index !== "number") return messages.eventsInRequirements;
  const number = index + 1;
  if (field === undefined) return messages.eventInRequirements({ number });
  return messages.partOfEvent({ part: eventWords[String(field)] ?? String(field), number });
}

/** What may be met, where the record's word is not the trade's. */
const contactWords: { readonly [part: string]: Message } = {
  tyre: messages.tire,
  damper: messages.shock,
};

function contactField(raw: unknown, path: Path, index: number): Field {
  const side = at(raw, ["fullTravel", "corners", index, "side"]);
  const nth = index === 0 ? "first" : "second";
  const words = messages.whichSide({ which: side === "left" || side === "right" ? side : nth });
  const whole = messages.checkOfWholeTravel;
  const [, , , field, part, name, ...rest] = path;
  if (field === "atRide") {
    const more = path.slice(4);
    return { id: "fullTravel", name: messages.heightAtRideIn({ words, whole }), rest: more };
  }
  if (field !== "contacts" || part === undefined) {
    return { id: "fullTravel", name: messages.sideIn({ words, whole }), rest: [] };
  }
  const met = contactWords[String(part)] ?? String(part);
  const contact = messages.contactOfIn2({ words, met, whole });
  return name === "blockHeight"
    ? { id: "fullTravel", name: messages.heightOfBlockIn({ whole }), rest }
    : { id: "fullTravel", name: contact, rest };
}

function limitField(
  raw: unknown,
  path: Path,
  corner: number,
  { side, prefix, words }: NamedCorner,
): Field {
  const index = path[3];
  if (typeof index !== "number") {
    return {
      id: `${prefix}.limits`,
      name: words === null ? messages.clearances : messages.clearancesOf({ words }),
      rest: [],
    };
  }
  const id = `${prefix}.limits.${index}`;
  const part = path[4];
  const kind = at(raw, ["corners", corner, "limits", index, "kind"]);
  const known = limitKinds.find((each) => each === kind);
  if (part === "reading" && known !== undefined && side !== null) {
    return { id, name: entryName(id, known), rest: path.slice(5) };
  }
  const number = index + 1;
  const limit =
    words === null
      ? messages.clearance({ number })
      : messages.clearanceOf({ index: number, words });
  if (part === "kind") return { id, name: messages.kindOf({ limit }), rest: [] };
  if (part === "at") return { id, name: messages.placeOf({ limit }), rest: [] };
  if (part === "perWheel") return { id, name: messages.closingPerWheelTravel({ limit }), rest: [] };
  if (part === "distance") {
    const name = messages.distanceFromPivotLine({ limit });
    return { id: `${id}.distance`, name, rest: path.slice(5) };
  }
  return { id, name: limit, rest: path.slice(part === undefined ? 4 : 5) };
}

/** Where within a reading or a table: "value 2", "point 3, force". */
function placeWords(id: string, rest: Path): Words {
  const [first, second] = rest;
  if (first === "values")
    return typeof second === "number"
      ? messages.value({ second: second + 1 })
      : messages.itsListOfValues;
  if (first === "typed") return messages.textThatWasTyped;
  if (first === "tol") return messages.its;
  if (first === "source") return messages.whoSaysSo;
  if (typeof first === "number") {
    const isDamping = id === "stop.damping";
    const what = isDamping ? "row" : "point";
    const number = first + 1;
    if (typeof second !== "number") return messages.row({ what, number });
    const columns = isDamping
      ? [messages.depth, messages.dampingCompressing, messages.dampingRebounding]
      : [messages.depth, messages.force];
    return messages.cell({ what, number, column: columns[second] ?? messages.column });
  }
  return "";
}

const typeWords: { readonly [expected: string]: Words } = {
  number: messages.numberWord,
  int: messages.wholeNumber,
  string: messages.text,
  boolean: messages.trueOrFalse,
  array: messages.list,
  tuple: messages.list,
  object: messages.groupOfFields,
  record: messages.groupOfFields,
  null: "null",
};

function isUnit(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function problemWords(issue: SchemaIssue, raw: unknown): Message {
  const value = at(raw, issue.path);
  if (value === undefined) return messages.isMissing;
  switch (issue.code) {
    case "invalid_type":
      if (typeof value === "number" && issue.expected === "number")
        return messages.mustBeFiniteNumber;
      return messages.mustBeNot({
        expected: typeWords[issue.expected] ?? issue.expected,
        describe: describe(value),
      });
    case "invalid_value":
      return messages.mustBeNot2({
        listed: listed(issue.values.map(String)),
        describe: describe(value),
      });
    case "invalid_union":
      return messages.isWhichIsNot({ describe: describe(value) });
    case "too_small":
      if (isUnit(value)) {
        return issue.minimum === 1
          ? messages.mustHoldAtLeast
          : messages.mustHoldAtLeastAnd({ minimum: `${issue.minimum}`, value: value.length });
      }
      return Number(issue.minimum) === 0 ? messages.cannotBeBelow0 : messages.isFarTooSmall;
    case "too_big":
      if (isUnit(value))
        return messages.holdsAndMostIs({ value: value.length, maximum: `${issue.maximum}` });
      return typeof value === "string"
        ? messages.isCharactersLongAnd({ value: value.length, maximum: `${issue.maximum}` })
        : messages.isFarTooLarge;
    default:
      return messages.sentence({ words: wordsOfSchema(issue.message) });
  }
}

/** What a schema says: the code of a message, or the reader's own words. */
function wordsOfSchema(said: string): Words {
  if (said === "") return messages.cantBeRead;
  return /^records\/\S+\.\w+$/.test(said) ? { code: said } : said.replace(/\.$/, "");
}

function describe(value: unknown): Words {
  if (value === null) return "null";
  if (typeof value === "string") return messages.quoted({ text: shortened(value) });
  if (Array.isArray(value)) return messages.list;
  return typeof value === "object" ? messages.groupOfFields : String(value);
}

function listed(all: readonly string[]): Words {
  const [last = "", ...others] = [...all].reverse();
  const [first, ...rest] = others.reverse();
  if (first === undefined) return last;
  const words = rest.reduce(
    (before: Words, next) => messages.comma({ words: before, next }),
    first,
  );
  return messages.or({ words, last });
}

/**
 * One schema issue as a fault whose sentence begins with the field's plain name, which tells the corner it is of
 * where it has sides.
 */
export function issueFault(issue: SchemaIssue, raw: unknown, hasSides = true): Fault {
  const { id, name, rest } = fieldOf(raw, issue.path, hasSides);
  const place = placeWords(id, rest);
  const sentence = messages.the({ name, place, problem: problemWords(issue, raw) });
  return { code: "fieldFault", sentence: [sentence], reading: id };
}

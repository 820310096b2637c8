import * as z from "zod/mini";
import type { Fault, Outcome } from "../../physics/outcome.ts";
import { fail, succeed } from "../../physics/outcome.ts";
import { type Message, type Sentence, small, type Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { checkFormat, recordBounds } from "../check/recordFormat.ts";
import { absentFaults, recordFaults, stopFaults } from "../check/recordRules.ts";
import { numberSchema } from "../check/schema/fields.ts";
import { platformSchema } from "../check/schema/platformSchema.ts";
import { rulesSchema } from "../check/schema/rideSchema.ts";
import { stopSchema } from "../check/schema/stopSchema.ts";
import { issueFault } from "../text/faultWords.ts";
import { checkPlainData, readJsonText, shortened } from "../text/jsonText.ts";
import { isPlainObject } from "../text/plainObject.ts";
import { mountingSchema } from "./mountingSchema.ts";
import {
  openPack,
  type Pack,
  packBounds,
  packFormat,
  packVersion,
  partsTwice,
  testKinds,
} from "./pack.ts";

const label = z.string().check(z.maxLength(recordBounds.labelCharacters));
const id = label.check(z.regex(/\S/, messages.mustNotBeEmpty.code));
const notes = z.optional(z.string().check(z.maxLength(recordBounds.notesCharacters)));

const nullableNumber = z.nullable(numberSchema);
const testedValue = z.nullable(z.tuple([numberSchema, numberSchema.check(z.gte(0))]));
const points = packBounds.testPoints;

const pair = z.tuple([numberSchema, numberSchema]);

/** Words and quantities; a later version may have kinds of quantities that this one does not know. */
const sentenceSchema = z
  .array(
    z.union([
      z.string().check(z.maxLength(1000)),
      z.looseObject({ kind: label, value: numberSchema }),
    ]),
  )
  .check(z.maxLength(50));

const packCycle = z.looseObject({
  lossJ: numberSchema,
  dynamicRateNPerMm: numberSchema,
  lossFactor: nullableNumber,
  peakForceN: numberSchema,
});

const packCycles = z.looseObject({
  count: numberSchema,
  frequencyHz: numberSchema,
  amplitudeMm: numberSchema,
  energyInJ: numberSchema,
  energyOutJ: numberSchema,
  lossJ: numberSchema,
  dynamicRateNPerMm: numberSchema,
  lossFactor: nullableNumber,
  equivalentDampingNsPerMm: nullableNumber,
  meanDepthMm: z.optional(numberSchema),
  greatestSpeedMmPerS: z.optional(numberSchema),
  first: z.optional(packCycle),
  later: z.optional(packCycle),
  loop: z.array(pair).check(z.maxLength(points)),
});

const conditions = z.looseObject({
  temperature: z.optional(label),
  preload: z.optional(label),
  conditioning: z.optional(label),
  rest: z.optional(label),
  specimen: z.optional(label),
});

const packTest = z.looseObject({
  id,
  file: label,
  importedAt: label,
  kind: z.enum(testKinds),
  rows: numberSchema.check(z.gte(0)),
  remarks: z
    .array(z.string().check(z.maxLength(1000)))
    .check(z.maxLength(packBounds.remarksOfTest)),
  remarkSentences: z.optional(z.array(sentenceSchema).check(z.maxLength(packBounds.remarksOfTest))),
  notes,
  staticSpeedMmPerS: z.optional(numberSchema.check(z.gt(0))),
  curve: z.optional(
    z.array(z.tuple([numberSchema, numberSchema, numberSchema])).check(z.maxLength(points)),
  ),
  residualRmsN: z.optional(numberSchema),
  damping: z.optional(
    z
      .array(
        z.looseObject({ depthMm: numberSchema, compressing: testedValue, rebounding: testedValue }),
      )
      .check(z.maxLength(points)),
  ),
  sample: z.optional(
    z.array(z.tuple([numberSchema, numberSchema, numberSchema])).check(z.maxLength(points)),
  ),
  cycles: z.optional(packCycles),
  blocks: z.optional(z.array(packCycles).check(z.maxLength(packBounds.blocksOfTest))),
  loss: z.optional(
    z.looseObject({
      staticShare: pair,
      restLoss: pair,
      branches: z
        .array(z.tuple([numberSchema, numberSchema, numberSchema]))
        .check(z.maxLength(recordBounds.branches)),
      dampingDoubt: numberSchema,
      fastestMmPerS: numberSchema,
      misfitN: z.optional(numberSchema),
    }),
  ),
  residuals: z.optional(z.array(pair).check(z.maxLength(points))),
  conditions: z.optional(conditions),
});

const spacers = z
  .array(numberSchema.check(z.gt(0), z.lte(300)))
  .check(z.maxLength(packBounds.spacers));

const packStop = z.looseObject({
  ...stopSchema.shape,
  id,
  material: z.optional(label),
  outerDiameterMm: z.optional(numberSchema.check(z.gt(0))),
  mounting: z.optional(label),
  mount: z.optional(mountingSchema),
  state: z.optional(z.enum(["offered", "discontinued"])),
  replacedBy: z.optional(id),
  build: z.optional(id),
  forceTolShare: z.optional(numberSchema.check(z.gte(0), z.lt(1))),
  conditions: z.optional(conditions),
  spacersMm: z.optional(spacers),
  notes,
  tests: z.optional(z.array(packTest).check(z.maxLength(packBounds.testsOfStop))),
});

/** Letters and digits only: it stands in the codes of labels. */
const makerSchema = z.looseObject({
  name: label,
  code: z.optional(z.string().check(z.regex(/^[A-Z0-9]{2,12}$/, messages.mustBe2To.code))),
  address: z.optional(z.string().check(z.maxLength(recordBounds.notesCharacters))),
  contact: z.optional(label),
  logo: z.optional(label.check(z.regex(/^[\w. -]+\.(svg|png)$/i, messages.mustBeSvgOr.code))),
  color: z.optional(z.string().check(z.regex(/^#[0-9a-f]{6}$/i, messages.mustBeColorSuch.code))),
});

const packSchema = z.looseObject({
  format: z.literal(packFormat),
  version: z.literal(packVersion),
  name: label,
  edition: z.optional(id),
  maker: z.optional(makerSchema),
  notes,
  stops: z.array(packStop).check(z.maxLength(packBounds.stops)),
  platforms: z.array(platformSchema).check(z.maxLength(packBounds.platforms)),
  spacersMm: z.optional(spacers),
  rules: z.optional(
    z.looseObject({
      daily: z.optional(rulesSchema),
      towing: z.optional(rulesSchema),
      offroad: z.optional(rulesSchema),
    }),
  ),
  repeatability: z.optional(
    z
      .array(
        z.looseObject({
          reading: id,
          tool: id,
          tol: numberSchema.check(z.gte(0)),
          pairs: numberSchema.check(z.gte(1)),
        }),
      )
      .check(z.maxLength(packBounds.repeatability)),
  ),
});

/** An Outcome with every fault beside it; `fault` is the first one. */
export type ReadPack =
  | { readonly ok: true; readonly value: Pack }
  | { readonly ok: false; readonly fault: Fault; readonly faults: readonly Fault[] };

/** A parts library from the text of a file, one sentence for each fault. */
export function readPackText(text: string, what: Words = messages.file): ReadPack {
  const json = readJsonText(text, what);
  return json.ok ? judge(json.value, what) : refused([json.fault]);
}

/** Does this text say that it is a pack? Enough to tell it from a check. */
export function looksLikePack(text: string): boolean {
  return /^\ufeff?\s{0,100}\{\s{0,100}"format"\s{0,10}:\s{0,10}"stopfit-pack"/.test(text);
}

/** A parts library from a value that has already been parsed; the value itself is never altered. */
export function readPackValue(value: unknown, what: Words = messages.library): ReadPack {
  const plain = checkPlainData(value, what);
  return plain.ok ? judge(value, what) : refused([plain.fault]);
}

const unreadable: Fault = { code: "unreadable", sentence: [messages.libraryCantBeRead] };

function refused(faults: readonly Fault[]): ReadPack {
  return { ok: false, fault: faults[0] ?? unreadable, faults };
}

function judge(value: unknown, what: Words): ReadPack {
  const own = ownFormat(value, what);
  if (!own.ok) return refused([own.fault]);
  const pack = openPack(value as Pack);
  const parsed = packSchema.safeParse(pack);
  if (!parsed.success) {
    return refused(parsed.error.issues.slice(0, 50).map((issue) => packFault(issue, value)));
  }
  const faults = packFaults(pack);
  return faults.length === 0 ? { ok: true, value: pack } : refused(faults);
}

function ownFormat(value: unknown, what: Words): Outcome<null> {
  if (!isPlainObject(value)) {
    return fail("notAPack", [
      messages.isNotPartsLibrary({ what, hasFormat: false, format: undefined }),
    ]);
  }
  const { format, version } = value;
  if (format === checkFormat) {
    return fail("otherFormat", [messages.isFitmentCheckNot({ what })]);
  }
  if (format !== packFormat) {
    const isText = typeof format === "string";
    const found = isText ? shortened(format) : undefined;
    return fail("otherFormat", [
      messages.isNotPartsLibrary({ what, hasFormat: isText, format: found }),
    ]);
  }
  if (typeof version === "number" && Number.isInteger(version) && version > packVersion) {
    return fail("newerVersion", [messages.wasMadeByNewer({ what, version, packVersion })]);
  }
  if (version !== packVersion && version !== 1) {
    return fail("unknownVersion", [messages.doesNotSayWhich({ what })]);
  }
  return succeed(null);
}

/** “Tall firm”, or stop 3 where it has no name. */
function itemName(value: unknown, list: "stops" | "platforms", index: number): Message {
  const items: unknown = Reflect.get(value as object, list);
  const item: unknown = Array.isArray(items) ? items[index] : null;
  const name: unknown = isPlainObject(item) ? item[list === "stops" ? "name" : "label"] : null;
  return typeof name === "string" && name.trim() !== ""
    ? messages.itemName({ list, name: shortened(name) })
    : messages.itemAt({ list, place: index + 1 });
}

/** An issue within a stop or platform, told in a record's words after the item's name. */
function packFault(issue: z.core.$ZodIssue, value: unknown): Fault {
  const [list, index, ...rest] = issue.path;
  if ((list !== "stops" && list !== "platforms") || typeof index !== "number") {
    return issueFault(issue, value);
  }
  const items = Reflect.get(value as object, list) as readonly unknown[];
  const item = items[index];
  const within = list === "stops" ? { stop: item } : item;
  const path = list === "stops" ? ["stop", ...rest] : placeInCheck(rest);
  const raw = list === "stops" ? within : asCheck(item);
  // A platform has no sides: its readings hold for both.
  const hasSides = list === "stops";
  return named(itemName(value, list, index), issueFault({ ...issue, path }, raw, hasSides));
}

function named(name: Message, fault: Fault): Fault {
  return { ...fault, sentence: [messages.within({ name, fault: lowered(fault.sentence) })] };
}

function lowered([first, ...rest]: Sentence): Sentence {
  const isWords = typeof first === "string" || (first !== undefined && "code" in first);
  return isWords ? [small(first), ...rest] : first === undefined ? [] : [first, ...rest];
}

const cornerFields: readonly PropertyKey[] = ["rideHeight", "gap", "cornerMassKg", "limits"];

/** A platform's readings are named as those of a check's corner. */
function placeInCheck(path: readonly PropertyKey[]): PropertyKey[] {
  return cornerFields.includes(path[0] ?? "") ? ["corners", 0, ...path] : [...path];
}

function asCheck(item: unknown): unknown {
  return isPlainObject(item) ? { ...item, corners: [item] } : {};
}

function packFaults(pack: Pack): Fault[] {
  const faults: Fault[] = [];
  const ids = new Set<string>();
  const unique = (kind: string, each: string): void => {
    if (ids.has(`${kind} ${each}`)) {
      faults.push({
        code: "idTwice",
        sentence: [messages.idBelongsToMore({ each: shortened(each), kind })],
      });
    }
    ids.add(`${kind} ${each}`);
  };
  for (const part of partsTwice(pack.stops)) {
    faults.push({
      code: "partTwice",
      sentence: [messages.partNumberBelongsTo({ part: shortened(part) })],
    });
  }
  for (const stop of pack.stops) {
    unique("stop", stop.id);
    const name = messages.stopWord({ name: shortened(stop.name) });
    faults.push(...stopFaults(stop).map((fault) => named(name, fault)));
  }
  for (const each of pack.platforms) {
    unique("vehicle", each.id);
    const name = messages.vehicle({ label: shortened(each.label) });
    const { gap, rideHeight, cornerMassKg, limits, layout, ride } = each;
    const corner = {
      side: "left" as const,
      limits,
      ...(gap !== undefined && { gap }),
      ...(rideHeight !== undefined && { rideHeight }),
      ...(cornerMassKg !== undefined && { cornerMassKg }),
    };
    const record = {
      corners: [corner],
      hasSides: false,
      layout,
      ...(ride !== undefined && { ride }),
    };
    faults.push(
      ...[...absentFaults(record), ...recordFaults(record)].map((fault) => named(name, fault)),
    );
    if (each.usualStop !== null && !pack.stops.some(({ id: stop }) => stop === each.usualStop)) {
      faults.push({
        code: "stopUnknown",
        sentence: [messages.itsUsualStopIs({ name, usualStop: shortened(each.usualStop) })],
      });
    }
  }
  for (const rules of Object.values(pack.rules ?? {})) {
    faults.push(...recordFaults({ corners: [], rules }));
  }
  return faults;
}

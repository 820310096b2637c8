import { definitionOf } from "../../physics/readings/index.ts";
import type { Message, Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { EntryKind } from "../entry/readingCatalogue.ts";

/** A field of a pack: its plain name, and what its numbers measure. */
export interface PackField {
  readonly name: Words;
  readonly kind: EntryKind;
}

/** Fields that are no readings, and what they are called. */
const names: { readonly [field: string]: Message } = {
  name: messages.nameWord,
  label: messages.nameWord,
  notes: messages.notesWord,
  duty: messages.dutyWord,
  material: messages.materialWord,
  outerDiameterMm: messages.outerDiameter,
  mounting: messages.mountingInWords,
  mount: messages.mountingWord,
  way: messages.wayOfMounting,
  sizeMm: messages.threadBoreOrCup,
  pitchMm: messages.pitchOfThread,
  spacingMm: messages.distanceBetweenBolts,
  seatMm: messages.seatAcross,
  roomMm: messages.roomAcross,
  layouts: messages.layoutsItIsMade,
  state: messages.stateWord,
  replacedBy: messages.replacedBy2,
  build: messages.buildWord,
  forceTolShare: messages.batchScatterOfForces,
  conditions: messages.conditionsOfTest,
  partNumber: messages.partNumber,
  revision: messages.revisionWord,
  spacersMm: messages.spacersWord,
  years: messages.yearsWord,
  trims: messages.trimsWord,
  tellApart: messages.howItIsTold,
  edition: messages.editionWord,
  maker: messages.makerWord,
  repeatability: messages.measuredOfReadings2,
  testedAtSpeed: messages.testedAtSpeed,
  estimated: messages.estimateOfCurve,
  how: messages.howItWasEstimated,
  forceShare: messages.ofEstimatedForces,
  tests: messages.testsWord,
  axle: messages.axleWord,
  kind: messages.layoutWord,
  limits: messages.usualClearances,
  usualStop: messages.usualStop,
  roadClass: messages.roadClass,
  events: messages.bumpsAndLandings,
};

/** Readings whose names say whose they are, which a stop's own entry does already. */
const stopNames: { readonly [field: string]: Message } = {
  freeHeight: messages.freeHeight,
  usableCompressionMm: messages.usableCompression,
  curve: messages.forceCurve,
  damping: messages.damping,
  restLoss: messages.restLoss,
  staticShare: messages.staticShare,
  stopLean: messages.lean,
};

const kinds: { readonly [field: string]: EntryKind } = {
  outerDiameterMm: "length",
  sizeMm: "length",
  pitchMm: "length",
  spacingMm: "length",
  seatMm: "length",
  roomMm: "length",
};

/** The field at this path of a stop, platform or set of rules. */
export function packField(path: string): PackField {
  const parts = path.split(".");
  const field = parts.at(-1) ?? path;
  const own = Object.hasOwn(names, field) ? names[field] : undefined;
  const entry = definitionOf(field);
  const kind = kinds[field] ?? ((own === undefined && entry?.kind) || "number");
  const reading = Object.hasOwn(stopNames, field) ? stopNames[field] : entry?.name;
  const isHow = own === undefined && parts.includes("estimated") && parts.length > 1;
  const told = own ?? reading ?? field;
  const name = isHow ? messages.howWasFound({ name: told }) : told;
  return {
    name: parts.includes("tolerances") ? messages.plusMinusOf({ name }) : name,
    kind,
  };
}

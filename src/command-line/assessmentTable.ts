import type { CornerAssessment, State } from "../physics/fitment.ts";
import type { Prescription } from "../physics/prescription/index.ts";
import type { Quantity, QuantityKind } from "../physics/sentence.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { estimateSentence, stopTitle } from "../records/pack/stopTitle.ts";
import { inModelUnits } from "../saying/modelUnits.ts";
import { quantityText, withPlainSpaces } from "../saying/quantityText.ts";
import { said } from "../saying/texts.ts";
import * as messages from "../words/compiled/command-line.ts";
import { prescriptionText } from "./prescriptionJson.ts";

const stateWords: { readonly [Each in State]: string } = {
  ok: messages.okItFits,
  care: messages.careItFitsWith,
  unsure: messages.unsureItCantBe,
  no: messages.noItDoesNot,
};

type Cell = (corner: CornerAssessment) => string;

const unknown = "–";

function shown(kind: QuantityKind, value: number | null | undefined): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return unknown;
  const quantity: Quantity = { kind, value };
  return withPlainSpaces(quantityText(quantity, "mm"));
}

function contacts(value: number | null): string {
  if (value === null || !Number.isFinite(value)) return unknown;
  return value !== 0 && value < 0.001 ? value.toExponential(1) : value.toPrecision(3);
}

function band(interval: readonly [number, number] | null): string {
  if (interval === null) return unknown;
  return `${interval[0].toFixed(1)} … ${interval[1].toFixed(1)} mm`;
}

function listed(classes: readonly number[] | null): string {
  if (classes === null) return unknown;
  return classes.length === 0 ? messages.noneOfThem : `${classes.join(" ")} N/mm`;
}

/** The rows of the table, top to bottom; rows that no corner has anything in are left out. */
function rowsOf(corners: readonly CornerAssessment[]): (readonly [string, Cell])[] {
  const rows: (readonly [string, Cell])[] = [
    [messages.leverRatioWheelStop, (c) => shown("ratio", c.leverRatio)],
    [messages.leverRatioStopPer, (c) => (1 / c.leverRatio).toFixed(3)],
    [messages.wheelTravelToContact, (c) => shown("length", c.wheelTravelToContactMm)],
    ["  95 %", (c) => band(c.intervals.wheelTravelToContactMm)],
    [messages.wheelTravelToFull, (c) => shown("length", c.wheelTravelToFullStopMm)],
    [messages.wheelTravelToHard, (c) => shown("length", c.wheelTravelToHardLimitMm)],
    [messages.whichWord, (c) => c.hardLimit ?? unknown],
    [messages.freeShareOfTravel, (c) => shown("share", c.freeShare)],
    [messages.reservePastFullCompression, (c) => shown("length", c.reserveMm)],
    ["  95 %", (c) => band(c.intervals.reserveMm)],
    [messages.probabilityOf5Mm, (c) => shown("share", c.clearanceProbability)],
    [messages.spacerWanted, (c) => shown("length", c.spacerMm)],
    [messages.tallerStopWantedBy, (c) => shown("length", c.tallerMm)],
    [messages.mostExtraHeight, (c) => shown("length", c.mostExtraHeightMm)],
  ];
  if (corners.some((corner) => corner.oneWheel !== undefined)) {
    rows.push(
      [messages.oneWheelLeverRatio, (c) => shown("ratio", c.oneWheel?.leverRatio)],
      [messages.oneWheelToContact, (c) => shown("length", c.oneWheel?.wheelTravelToContactMm)],
      [messages.oneWheelToFull, (c) => shown("length", c.oneWheel?.wheelTravelToFullStopMm)],
    );
  }
  rows.push(
    [messages.stopSecantRate, (c) => shown("rate", c.secantRateNPerMm)],
    [messages.stopStiffnessClass, (c) => `${c.stopRateClass} N/mm`],
    [messages.stopProgressive, (c) => (c.progressive ? "yes" : "no")],
    [messages.roadTravel1, (c) => shown("length", c.roadTravelSigmaMm)],
    [messages.contactsPerKm, (c) => contacts(c.contactsPerKm)],
    [messages.sagUnderPayload, (c) => shown("length", c.loadedSagMm)],
    [messages.loadedTravelToContact, (c) => shown("length", c.loadedTravelToContactMm)],
    [messages.loadedContactsPerKm, (c) => contacts(c.loadedContactsPerKm)],
    [messages.freeTravelNeededLoaded, (c) => shown("length", c.freeTravelNeededMm)],
    [messages.freeTravelNeededAs, (c) => shown("length", c.freeTravelNeededUnladenMm)],
    [messages.probabilityOfIt, (c) => shown("share", c.earlyContactProbability)],
  );
  if (corners.some((corner) => corner.loadedCompressionMm !== undefined)) {
    rows.push([messages.loadedStopCompression, (c) => shown("length", c.loadedCompressionMm)]);
  }
  const events = Math.max(0, ...corners.map((corner) => corner.events?.length ?? 0));
  for (let index = 0; index < events; index += 1) rows.push(...eventRows(corners, index));
  rows.push([messages.classesThatWork, (c) => listed(c.classesThatWork)]);
  return rows;
}

const fromTest = messages.fromItsTest;

function eventRows(
  corners: readonly CornerAssessment[],
  index: number,
): (readonly [string, Cell])[] {
  const kind = corners.find((corner) => corner.events?.[index] !== undefined)?.events?.[index]
    ?.kind;
  const name = kind ?? "event";
  const event = (corner: CornerAssessment) => corner.events?.[index];
  const doubt = (corner: CornerAssessment) => corner.fromTest?.events[index];
  return [
    [messages.wheelTravel({ name }), (c) => shown("length", event(c)?.peakWheelTravelMm)],
    [messages.stopCompression({ name }), (c) => shown("length", event(c)?.peakCompressionMm)],
    [fromTest, (c) => shown("length", doubt(c)?.peakCompressionMm)],
    [messages.stopForce({ name }), (c) => shown("force", event(c)?.peakStopForceN)],
    [fromTest, (c) => shown("force", doubt(c)?.peakStopForceN)],
    [
      messages.bodyAcceleration({ name }),
      (c) => shown("acceleration", event(c)?.peakAccelerationG),
    ],
    [fromTest, (c) => shown("acceleration", doubt(c)?.peakAccelerationG)],
    [messages.energyIn({ name }), (c) => shown("energy", event(c)?.energyInJ)],
    [messages.energyOut({ name }), (c) => shown("energy", event(c)?.energyOutJ)],
    [fromTest, (c) => shown("energy", doubt(c)?.energyOutJ)],
    [messages.speedOffStop({ name }), (c) => shown("speed", event(c)?.leaveSpeedMmPerS)],
    [fromTest, (c) => shown("speed", doubt(c)?.leaveSpeedMmPerS)],
    [messages.speedOntoStop({ name }), (c) => shown("speed", event(c)?.closingSpeedMmPerS)],
    [messages.timesItsFastestTest, (c) => shown("ratio", doubt(c)?.timesTested)],
    [messages.passed({ name }), (c) => passed(event(c))],
  ];
}

function passed(event: { fullStop: boolean; hardContact: boolean } | undefined): string {
  if (event === undefined) return unknown;
  if (event.hardContact)
    return event.fullStop ? messages.fullCompressionHardContact : messages.hardContact;
  return event.fullStop ? messages.fullCompression : "nothing";
}

/** One assessed check as a table to read: all numbers with their units, then every check's sentence. */
export function assessmentTable(
  file: string,
  record: CheckRecord,
  assessment: { readonly verdict: State; readonly corners: readonly CornerAssessment[] },
  prescription: Prescription,
): string {
  const { corners, verdict } = assessment;
  const rows = rowsOf(corners)
    .map(([label, cell]) => [label, ...corners.map(cell)])
    .filter(([, ...cells]) => cells.some((cell) => cell !== unknown));
  const all = [["", ...corners.map(({ side }) => side)], ...rows];
  const widths = all[0]?.map((_, column) =>
    Math.max(...all.map((row) => row[column]?.length ?? 0)),
  );
  const lines = all.map((row) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths?.[0] ?? 0) : cell.padStart((widths?.[column] ?? 0) + 2),
      )
      .join("")
      .trimEnd(),
  );
  const checks = corners.flatMap(({ side, checks: each }) =>
    each.map(({ id, state, sentence }) => `${side} ${id}: ${state}. ${inModelUnits(sentence)}`),
  );
  const title = `${file}: ${printable(record.vehicle.label)}, ${record.axle}, ${printable(said(stopTitle(record.stop)))}`;
  const estimate = estimateSentence(record.stop);
  const marked =
    estimate === null ? [] : [messages.estimate({ estimate: printable(said(estimate)) })];
  const whatToDo = messages.whatToDo({ prescription: printable(prescriptionText(prescription)) });
  return [title, stateWords[verdict], ...marked, ...lines, ...checks, whatToDo].join("\n");
}

/** Text from a file without characters that would steer a terminal. */
export function printable(text: string): string {
  return text.replace(/\p{C}/gu, " ");
}

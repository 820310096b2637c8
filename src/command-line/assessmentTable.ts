import type { CornerAssessment, State } from "../physics/fitment.ts";
import type { Prescription } from "../physics/prescription/index.ts";
import { inModelUnits, type Quantity, type QuantityKind } from "../physics/sentence.ts";
import type { CheckRecord } from "../records/check/checkRecord.ts";
import { quantityText, withPlainSpaces } from "../records/entry/quantityText.ts";
import { estimateSentence, stopTitle } from "../records/pack/stopTitle.ts";
import { prescriptionText } from "./prescriptionJson.ts";

const stateWords: { readonly [Each in State]: string } = {
  ok: "OK: it fits",
  care: "CARE: it fits with care",
  unsure: "UNSURE: it can't be said yet",
  no: "NO: it does not fit",
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
  return classes.length === 0 ? "none" : `${classes.join(" ")} N/mm`;
}

/** The rows of the table, top to bottom; rows that no corner has anything in are left out. */
function rowsOf(corners: readonly CornerAssessment[]): (readonly [string, Cell])[] {
  const rows: (readonly [string, Cell])[] = [
    ["lever ratio, wheel : stop", (c) => shown("ratio", c.leverRatio)],
    ["lever ratio, stop per wheel", (c) => (1 / c.leverRatio).toFixed(3)],
    ["wheel travel to contact", (c) => shown("length", c.wheelTravelToContactMm)],
    ["  95 %", (c) => band(c.intervals.wheelTravelToContactMm)],
    ["wheel travel to full compression", (c) => shown("length", c.wheelTravelToFullStopMm)],
    ["wheel travel to hard contact", (c) => shown("length", c.wheelTravelToHardLimitMm)],
    ["  which", (c) => c.hardLimit ?? unknown],
    ["free share of the travel", (c) => shown("share", c.freeShare)],
    ["reserve past full compression", (c) => shown("length", c.reserveMm)],
    ["  95 %", (c) => band(c.intervals.reserveMm)],
    ["  probability of 5 mm", (c) => shown("share", c.clearanceProbability)],
    ["spacer wanted", (c) => shown("length", c.spacerMm)],
    ["taller stop wanted, by", (c) => shown("length", c.tallerMm)],
    ["most extra height", (c) => shown("length", c.mostExtraHeightMm)],
  ];
  if (corners.some((corner) => corner.oneWheel !== undefined)) {
    rows.push(
      ["one wheel: lever ratio", (c) => shown("ratio", c.oneWheel?.leverRatio)],
      ["one wheel: to contact", (c) => shown("length", c.oneWheel?.wheelTravelToContactMm)],
      [
        "one wheel: to full compression",
        (c) => shown("length", c.oneWheel?.wheelTravelToFullStopMm),
      ],
    );
  }
  rows.push(
    ["stop, secant rate", (c) => shown("rate", c.secantRateNPerMm)],
    ["stop, stiffness class", (c) => `${c.stopRateClass} N/mm`],
    ["stop, progressive", (c) => (c.progressive ? "yes" : "no")],
    ["road travel, 1 σ", (c) => shown("length", c.roadTravelSigmaMm)],
    ["contacts per km", (c) => contacts(c.contactsPerKm)],
    ["sag under payload", (c) => shown("length", c.loadedSagMm)],
    ["loaded: travel to contact", (c) => shown("length", c.loadedTravelToContactMm)],
    ["loaded: contacts per km", (c) => contacts(c.loadedContactsPerKm)],
    ["free travel needed, loaded", (c) => shown("length", c.freeTravelNeededMm)],
    ["free travel needed, as measured", (c) => shown("length", c.freeTravelNeededUnladenMm)],
    ["  probability of it", (c) => shown("share", c.earlyContactProbability)],
  );
  if (corners.some((corner) => corner.loadedCompressionMm !== undefined)) {
    rows.push(["loaded: stop compression", (c) => shown("length", c.loadedCompressionMm)]);
  }
  const events = Math.max(0, ...corners.map((corner) => corner.events?.length ?? 0));
  for (let index = 0; index < events; index += 1) rows.push(...eventRows(corners, index));
  rows.push(["classes that work", (c) => listed(c.classesThatWork)]);
  return rows;
}

const fromTest = "  ± from its test";

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
    [`${name}: wheel travel`, (c) => shown("length", event(c)?.peakWheelTravelMm)],
    [`${name}: stop compression`, (c) => shown("length", event(c)?.peakCompressionMm)],
    [fromTest, (c) => shown("length", doubt(c)?.peakCompressionMm)],
    [`${name}: stop force`, (c) => shown("force", event(c)?.peakStopForceN)],
    [fromTest, (c) => shown("force", doubt(c)?.peakStopForceN)],
    [`${name}: body acceleration`, (c) => shown("acceleration", event(c)?.peakAccelerationG)],
    [fromTest, (c) => shown("acceleration", doubt(c)?.peakAccelerationG)],
    [`${name}: energy in`, (c) => shown("energy", event(c)?.energyInJ)],
    [`${name}: energy out`, (c) => shown("energy", event(c)?.energyOutJ)],
    [fromTest, (c) => shown("energy", doubt(c)?.energyOutJ)],
    [`${name}: speed off the stop`, (c) => shown("speed", event(c)?.leaveSpeedMmPerS)],
    [fromTest, (c) => shown("speed", doubt(c)?.leaveSpeedMmPerS)],
    [`${name}: speed onto the stop`, (c) => shown("speed", event(c)?.closingSpeedMmPerS)],
    ["  times its fastest test", (c) => shown("ratio", doubt(c)?.timesTested)],
    [`${name}: passed`, (c) => passed(event(c))],
  ];
}

function passed(event: { fullStop: boolean; hardContact: boolean } | undefined): string {
  if (event === undefined) return unknown;
  if (event.hardContact) return event.fullStop ? "full compression, hard contact" : "hard contact";
  return event.fullStop ? "full compression" : "nothing";
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
  const title = `${file}: ${printable(record.vehicle.label)}, ${record.axle}, ${printable(stopTitle(record.stop))}`;
  const estimate = estimateSentence(record.stop);
  const marked = estimate === null ? [] : [`ESTIMATE: ${printable(estimate)}`];
  const whatToDo = `what to do: ${printable(prescriptionText(prescription))}`;
  return [title, stateWords[verdict], ...marked, ...lines, ...checks, whatToDo].join("\n");
}

/** Text from a file without characters that would steer a terminal. */
export function printable(text: string): string {
  return text.replace(/\p{C}/gu, " ");
}

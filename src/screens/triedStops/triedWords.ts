import type { State, Stop } from "../../physics/fitment.ts";
import { travelKeptSentence } from "../../physics/prescription/index.ts";
import { little, type RankedStop } from "../../physics/ranking/index.ts";
import { spacer } from "../../physics/sentence.ts";
import { secantRate, stiffnessClassOf, stopCurve } from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { quantityText, sentenceText, withoutRanges } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { mountingText } from "../../records/pack/mounting.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { estimateBand, stopTitle } from "../../records/pack/stopTitle.ts";
import { checkTitles, sideWords } from "../assessment/stateWords.ts";

/** One for each row of the list: a stop may be there twice, with a spacer and without. */
export function rankedKey({ id, spacerMm }: RankedStop): string {
  return `${id} ${spacerMm}`;
}

export function rankedName(ranked: RankedStop, unit: LengthUnit): string {
  const { spacerMm } = ranked;
  const name = stopTitle(ranked);
  if (spacerMm === 0) return name;
  return `${name} with a spacer of ${quantityText(spacer(spacerMm), unit)}`;
}

/** What a stop is as a part, line by line; the same lines for every stop. */
export function partFacts(
  stop: Stop,
  inPack: PackStop | null,
  unit: LengthUnit,
): readonly { readonly name: string; readonly text: string | null }[] {
  const curve = stopCurve(stop);
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const named = (value: number) => quantityText({ kind: "stiffnessClass", value }, unit);
  return [
    { name: "Part number", text: stop.partNumber === undefined ? null : partText(stop) },
    { name: "Free height", text: length(meanOf(stop.freeHeight)) },
    { name: "Usable compression", text: length(stop.usableCompressionMm) },
    {
      name: "Stiffness class",
      text: curve.ok ? named(stiffnessClassOf(secantRate(curve.value))) : null,
    },
    {
      name: "Force curve",
      text: stop.estimated ? `estimate, ${estimateBand(stop.estimated)}` : "tested",
    },
    {
      name: "Forces vary by",
      text:
        inPack?.forceTolShare === undefined
          ? null
          : `± ${quantityText({ kind: "share", value: inPack.forceTolShare }, unit)}, for information: judged by the forces as tested`,
    },
    { name: "Damping", text: stop.damping ? "tested at speed" : "not tested" },
    { name: "Made to", text: stop.duty === "carry" ? "carry" : "take impacts" },
    {
      name: "Outer diameter",
      text: inPack?.outerDiameterMm === undefined ? null : length(inPack.outerDiameterMm),
    },
    {
      name: "Mounting",
      text: inPack?.mount ? mountingText(inPack.mount, unit) : (inPack?.mounting ?? null),
    },
    { name: "Material", text: inPack?.material ?? null },
  ];
}

/** Diameters that differ by less take the same seat, mm. Common practice, no source. */
const sameDiameterMm = 1;

/** What of its mounting and outer diameter is not as on the stop that is fitted, and what that asks for. */
export function mountDifferences(
  stop: PackStop,
  fitted: PackStop | null,
  unit: LengthUnit,
): readonly string[] {
  if (fitted === null) return [];
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const told: string[] = [];
  const { mount, outerDiameterMm: across } = stop;
  if (mount && fitted.mount) {
    const [mounting, fittedMounting] = [mount, fitted.mount].map((it) => mountingText(it, unit));
    if (mounting !== fittedMounting) {
      told.push(
        `Another mounting: ${mounting}; the stop of this check has ${fittedMounting}. It needs another seat or an adapter.`,
      );
    }
  }
  const { outerDiameterMm: acrossFitted } = fitted;
  if (across !== undefined && acrossFitted !== undefined) {
    const wider = across - acrossFitted;
    if (Math.abs(wider) >= sameDiameterMm) {
      told.push(
        wider > 0
          ? `Wider by ${length(wider)} (${length(across)} across): see that it has room, pressed flat as well.`
          : `Narrower by ${length(-wider)} (${length(across)} across): see that its pad and seat still meet it.`,
      );
    }
  }
  return told;
}

/** What counts as nearly, in the person's unit. */
export function nearlyText(unit: LengthUnit): string {
  const travel = quantityText({ kind: "length", value: little.reserveMm }, unit);
  return `Each fails, but not by much: at most ${travel} of travel short, or one stiffness class beside one that works. Each one says what fails.`;
}

export interface MarginText {
  readonly name: string;
  readonly text: string;
  readonly short: boolean;
}

/** What is left, or short, at the worst corner; what is not known is left out. */
export function marginTexts({ margins }: RankedStop, unit: LengthUnit): readonly MarginText[] {
  const texts: MarginText[] = [];
  const add = (name: string, value: number | null, kind: "length" | "acceleration" | "share") => {
    if (value === null) return;
    const amount = quantityText({ kind, value: Math.abs(value) }, unit, { coarse: true });
    texts.push({
      name,
      text: value < 0 ? `${amount} short` : `${amount} to spare`,
      short: value < 0,
    });
  };
  add("Reserve before hard contact", margins.reserveMm, "length");
  add("Free travel, loaded", margins.freeTravelMm, "length");
  add("Acceleration, under the cap", margins.accelerationG, "acceleration");
  if (margins.compressionShare !== null) {
    const { compressionShare: value } = margins;
    const amount = quantityText({ kind: "share", value: Math.abs(value) }, unit);
    texts.push({
      name: "Compression in the hardest event",
      text: value < 0 ? `${amount} past full compression` : `${amount} left`,
      short: value < 0,
    });
  }
  return texts;
}

/** That too little of the travel to contact is left, where it is; else null. */
export function travelLost({ placed }: RankedStop, unit: LengthUnit): string | null {
  return placed === null || placed.judgement.keepsTravel
    ? null
    : sentenceText(travelKeptSentence, unit);
}

export interface ToldShortcoming {
  readonly state: State;
  readonly title: string;
  readonly text: string;
}

/** What fails or is in doubt; once, where both sides say the same. */
export function shortcomingsTold(
  { shortcomings }: RankedStop,
  unit: LengthUnit,
): readonly ToldShortcoming[] {
  const texts = shortcomings.map(({ check, state, side, sentence }) => ({
    check,
    state,
    side,
    text: sentenceText(withoutRanges(sentence), unit, { coarse: true }),
  }));
  return texts.flatMap(({ check, state, side, text }, index) => {
    const alike = texts.filter((each) => each.check === check && each.text === text);
    if (texts.findIndex((each) => each.check === check && each.text === text) !== index) return [];
    const where = alike.length > 1 ? "both sides" : sideWords[side].toLowerCase();
    return [{ state, title: `${checkTitles[check]}, ${where}`, text }];
  });
}

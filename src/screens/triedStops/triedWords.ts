import type { State, Stop } from "../../physics/fitment.ts";
import { travelKeptSentence } from "../../physics/prescription/index.ts";
import { little, type RankedStop } from "../../physics/ranking/index.ts";
import { spacer } from "../../physics/sentence.ts";
import { secantRate, stiffnessClassOf, stopCurve } from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { mountingText } from "../../records/pack/mounting.ts";
import type { PackStop } from "../../records/pack/pack.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { estimateBand, stopTitle } from "../../records/pack/stopTitle.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText, withoutRanges } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/triedStops.ts";
import { checkTitles } from "../assessment/stateWords.ts";

/** One for each row of the list: a stop may be there twice, with a spacer and without. */
export function rankedKey({ id, spacerMm }: RankedStop): string {
  return `${id} ${spacerMm}`;
}

export function rankedName(ranked: RankedStop, unit: LengthUnit): string {
  const { spacerMm } = ranked;
  const name = said(stopTitle(ranked));
  if (spacerMm === 0) return name;
  return messages.withSpacerOf({ name, spacerMm: quantityText(spacer(spacerMm), unit) });
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
    {
      name: messages.partNumber,
      text: stop.partNumber === undefined ? null : said(partText(stop)),
    },
    { name: messages.freeHeight, text: length(meanOf(stop.freeHeight)) },
    { name: messages.usableCompression, text: length(stop.usableCompressionMm) },
    {
      name: messages.stiffnessClass,
      text: curve.ok ? named(stiffnessClassOf(secantRate(curve.value))) : null,
    },
    {
      name: messages.forceCurve,
      text: stop.estimated
        ? messages.estimate({ estimateBand: said(estimateBand(stop.estimated)) })
        : "tested",
    },
    {
      name: messages.forcesVaryBy,
      text:
        inPack?.forceTolShare === undefined
          ? null
          : messages.forInformationJudgedBy({
              forceTolShare: quantityText({ kind: "share", value: inPack.forceTolShare }, unit),
            }),
    },
    { name: messages.damping, text: stop.damping ? messages.testedAtSpeed : messages.notTested },
    { name: messages.madeTo, text: stop.duty === "carry" ? "carry" : messages.takeImpacts },
    {
      name: messages.outerDiameter,
      text: inPack?.outerDiameterMm === undefined ? null : length(inPack.outerDiameterMm),
    },
    {
      name: messages.mounting,
      text: inPack?.mount
        ? sentenceText(mountingText(inPack.mount), unit)
        : (inPack?.mounting ?? null),
    },
    { name: messages.material, text: inPack?.material ?? null },
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
    const [mounting = "", fittedMounting = ""] = [mount, fitted.mount].map((it) =>
      sentenceText(mountingText(it), unit),
    );
    if (mounting !== fittedMounting) {
      told.push(messages.anotherMountingStopOf({ mounting, fittedMounting }));
    }
  }
  const { outerDiameterMm: acrossFitted } = fitted;
  if (across !== undefined && acrossFitted !== undefined) {
    const wider = across - acrossFitted;
    if (Math.abs(wider) >= sameDiameterMm) {
      told.push(
        wider > 0
          ? messages.widerByAcrossSee({ wider: length(wider), across: length(across) })
          : messages.narrowerByAcrossSee({ wider: length(-wider), across: length(across) }),
      );
    }
  }
  return told;
}

/** What counts as nearly, in the person's unit. */
export function nearlyText(unit: LengthUnit): string {
  const travel = quantityText({ kind: "length", value: little.reserveMm }, unit);
  return messages.eachFailsButNot({ travel });
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
      text: value < 0 ? messages.short({ amount }) : messages.toSpare({ amount }),
      short: value < 0,
    });
  };
  add(messages.reserveBeforeHardContact, margins.reserveMm, "length");
  add(messages.freeTravelLoaded, margins.freeTravelMm, "length");
  add(messages.accelerationUnderCap, margins.accelerationG, "acceleration");
  if (margins.compressionShare !== null) {
    const { compressionShare: value } = margins;
    const amount = quantityText({ kind: "share", value: Math.abs(value) }, unit);
    texts.push({
      name: messages.compressionInHardestEvent,
      text: value < 0 ? messages.pastFullCompression({ amount }) : messages.left({ amount }),
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
    const title = messages.checkOfSide({
      check: checkTitles[check],
      side: alike.length > 1 ? "both" : side,
    });
    return [{ state, title, text }];
  });
}

import type { State } from "../../physics/fitment.ts";
import type { RankedStop } from "../../physics/ranking/rankStops.ts";
import { secantRate, stiffnessClassOf } from "../../physics/stop/stiffnessClass.ts";
import { stopCurve } from "../../physics/stop/stopCurve.ts";
import { meanOf } from "../../physics/uncertainty/readingMean.ts";
import type { PackStop } from "../../records/pack.ts";
import { quantityText, sentenceText } from "../../records/quantityText.ts";
import type { LengthUnit } from "../../records/units.ts";
import { checkTitles, sideWords } from "../answer/stateWords.ts";

/** One for each row of the list: a stop may be there twice, with a spacer and without. */
export function rankedKey({ id, spacerMm }: RankedStop): string {
  return `${id} ${spacerMm}`;
}

export function rankedName({ name, spacerMm }: RankedStop, unit: LengthUnit): string {
  if (spacerMm === 0) return name;
  return `${name} with a spacer of ${quantityText({ kind: "length", value: spacerMm }, unit)}`;
}

/** Height, stiffness class, mounting and material: what tells one stop of the pack from another. */
export function stopFacts(stop: PackStop, unit: LengthUnit): string {
  const curve = stopCurve(stop);
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  return [
    `${length(meanOf(stop.freeHeight))} high`,
    curve.ok
      ? `class ${quantityText({ kind: "rate", value: stiffnessClassOf(secantRate(curve.value)) }, unit)}`
      : "class not known",
    ...(stop.estimated ? ["curve by estimate"] : []),
    ...(stop.duty === "carry" ? ["made to carry"] : []),
    ...(stop.outerDiameterMm === undefined ? [] : [`${length(stop.outerDiameterMm)} across`]),
    ...(stop.mounting ? [stop.mounting] : []),
    ...(stop.material ? [stop.material] : []),
  ].join(" · ");
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
    const amount = quantityText({ kind, value: Math.abs(value) }, unit);
    texts.push({
      name,
      text: value < 0 ? `${amount} short` : `${amount} over`,
      short: value < 0,
    });
  };
  add("Reserve before the hard limit", margins.reserveMm, "length");
  add("Free travel, loaded", margins.freeTravelMm, "length");
  add("Acceleration, under the cap", margins.accelerationG, "acceleration");
  if (margins.compressionShare !== null) {
    const { compressionShare: value } = margins;
    const amount = quantityText({ kind: "share", value: Math.abs(value) }, unit);
    texts.push({
      name: "Compression in the hardest event",
      text: value < 0 ? `${amount} past full stop` : `${amount} left`,
      short: value < 0,
    });
  }
  return texts;
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
    text: sentenceText(sentence, unit),
  }));
  return texts.flatMap(({ check, state, side, text }, index) => {
    const alike = texts.filter((each) => each.check === check && each.text === text);
    if (texts.findIndex((each) => each.check === check && each.text === text) !== index) return [];
    const where = alike.length > 1 ? "both sides" : sideWords[side].toLowerCase();
    return [{ state, title: `${checkTitles[check]}, ${where}`, text }];
  });
}

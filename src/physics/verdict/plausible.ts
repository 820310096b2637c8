import * as messages from "../../words/compiled/physics/verdict.ts";
import type { Check, GeometryReadingName, Interval, Reading } from "../fitment.ts";
import { believableWheelPerOuter, measuredWheelPerOuter } from "../kinematics/wheelPerOuter.ts";
import { layoutRegistry } from "../layouts/geometryRegistry.ts";
import { definitionOf } from "../readings/definitionOf.ts";
import { type QuantityId, withoutSide } from "../readings/readingId.ts";
import { isBelievable } from "../readings/valueDefinition.ts";
import { capital, commaList, distinctWords, length, type Sentence } from "../sentence.ts";
import { meanOf } from "../uncertainty/readingMean.ts";
import { type CornerEvidence, nameIn } from "./cornerEvidence.ts";

/** Lever ratios seen on vehicles, wheel per stop. Common practice, no source. */
export const believableRatio: Interval = [0.8, 6];

const millimetresPerInch = 25.4;

/** Repeats may differ by this many tolerances before one of them is doubted. Common practice. */
const mostScatter = 3;

interface Oddity {
  readonly reading: QuantityId;
  readonly sentence: Sentence;
}

/**
 * Can these readings be right? Unsure, naming the reading, where the lever ratio lies outside 0.8…6,
 * the gap is larger than all travel, a length fits only if divided or multiplied by 25.4, or repeats
 * differ (greatest less least) by more than 3 × their tolerance; also where the
 * stops of a beam axle would stand outside its wheels, and where the wheel would rise less than 0.85 or
 * more than 1.3 times as far as the outer joint, by what was measured of two arms.
 */
export function plausibleCheck(evidence: CornerEvidence): Check {
  const [first, ...others] = oddities(evidence);
  if (first === undefined) {
    return { id: "plausible", state: "ok", sentence: [messages.noOddReadings] };
  }
  const more: Sentence =
    others.length === 0
      ? []
      : [
          messages.alsoLookAt({
            join: commaList(distinctWords(others.map(({ reading }) => nameIn(evidence, reading)))),
          }),
        ];
  return {
    id: "plausible",
    state: "unsure",
    reading: first.reading,
    sentence: [...first.sentence, ...more],
  };
}

function oddities(evidence: CornerEvidence): readonly Oddity[] {
  const { corner: own, places, budget } = evidence.corner;
  const measured = new Map<QuantityId, Reading>();
  for (const { id, reading } of places.all) if (reading !== null) measured.set(id, reading);
  if (own.rideHeight !== undefined) measured.set(`${own.side}.rideHeight`, own.rideHeight);
  if (own.cornerMassKg !== undefined) measured.set(`${own.side}.cornerMassKg`, own.cornerMassKg);
  const found: Oddity[] = [];
  for (const [id, reading] of measured) {
    const slip = unitSlip(evidence, id, meanOf(reading));
    if (slip !== null) found.push(slip);
  }
  const ratio = ratioOddity(evidence);
  if (ratio !== null) found.push(ratio);
  const linkage = linkageOddity(evidence);
  if (linkage !== null) found.push(linkage);
  if (budget.limit !== null && budget.gapMm > budget.limit.closingMm) {
    const stands = places.all[places.stands]?.id ?? `${own.side}.gap`;
    found.push({
      reading: stands,
      sentence: [
        messages.gapIsLargerThan({
          side: own.side,
          gapMm: length(budget.gapMm),
          closingMm: length(budget.limit.closingMm),
        }),
      ],
    });
  }
  for (const [id, reading] of measured) {
    const spread = Math.max(...reading.values) - Math.min(...reading.values);
    if (spread > mostScatter * reading.tol) {
      found.push({
        reading: id,
        sentence: [messages.repeatsOfDifferMore({ nameIn: nameIn(evidence, id) })],
      });
    }
  }
  return found;
}

/** A wheel that rises much more or less than its joint, by what was measured of the two arms. */
function linkageOddity({ fitment, corner }: CornerEvidence): Oddity | null {
  const [least, greatest] = believableWheelPerOuter;
  const ratio = measuredWheelPerOuter(fitment.layout, corner.corner);
  if (ratio === null || (ratio >= least && ratio <= greatest)) return null;
  const other = corner.places.all.find(({ id }) =>
    ["otherArmAngle", "otherOuterHeight"].includes(withoutSide(id)),
  );
  return {
    reading: other?.id ?? "otherArmAngle",
    sentence: [messages.withTheseReadingsWheel({ ratio: ratio.toFixed(2), least, greatest })],
  };
}

/** A length that would be believable had inches and millimetres been mixed up, and is not as it is. */
function unitSlip(evidence: CornerEvidence, id: QuantityId, mean: number): Oddity | null {
  const definition = definitionOf(id);
  if (definition?.kind !== "length") return null;
  const touching = id.endsWith(".gap") && evidence.fitment.stop.duty === "carry" && mean >= 0;
  const within = (value: number) => isBelievable(definition, value);
  if (touching) return null;
  if (within(mean)) return null;
  const right = [mean * millimetresPerInch, mean / millimetresPerInch].find(within);
  if (right === undefined) return null;
  return {
    reading: id,
    sentence: [
      messages.wouldBeWhichFits({
        nameIn: capital(nameIn(evidence, id)),
        mean: length(mean),
        right: length(right),
      }),
    ],
  };
}

function ratioOddity(evidence: CornerEvidence): Oddity | null {
  const { doubtful } = layoutRegistry[evidence.fitment.layout.kind];
  const { budget, places } = evidence.corner;
  const placeOf = (name: GeometryReadingName) =>
    places.all.find(({ id }) => withoutSide(id) === name);
  if (budget.leverRatio < believableRatio[0] || budget.leverRatio > believableRatio[1]) {
    const reading = placeOf(doubtful)?.id ?? doubtful;
    return {
      reading,
      sentence: [
        messages.leverRatioWouldBe({
          leverRatio: { kind: "ratio", value: budget.leverRatio },
          nameIn: nameIn(evidence, reading),
        }),
      ],
    };
  }
  const spacing = placeOf("stopSpacing");
  const track = placeOf("track");
  if (spacing !== undefined && track !== undefined && spacing.drawn.mean > track.drawn.mean) {
    const reading = spacing.id;
    return {
      reading,
      sentence: [messages.stopsWouldStandWider({ nameIn: nameIn(evidence, reading) })],
    };
  }
  return null;
}

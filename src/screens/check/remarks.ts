import type { LayoutKind } from "../../physics/fitment.ts";
import { kinematicsOf } from "../../physics/kinematics/index.ts";
import {
  isBelievable,
  neededReadings,
  type ReadingId,
  type ValueDefinition,
  withoutSide,
} from "../../physics/readings/index.ts";
import type { Quantity, QuantityKind, Sentence } from "../../physics/sentence.ts";
import type { CheckLayout } from "../../records/check/checkRecord.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { type Entry, readEntry } from "../../records/entry/entry.ts";
import { entryOutcome, limitKindOf } from "../../records/entry/entryPath.ts";
import { catalogueEntry, type EntryKind } from "../../records/entry/readingCatalogue.ts";
import { type EntryUnit, mmPerCentimetre, mmPerInch } from "../../records/entry/units.ts";
import { hasBeamAxle } from "../../records/filling/layoutChoices.ts";
import { sentenceOf } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { Tone } from "../parts/Notice.tsx";

/** Something said about what was typed. It never stops anyone. */
export interface Remark {
  readonly tone: Tone;
  readonly sentence: Sentence;
  /** The unit it was probably measured in. */
  readonly fix?: EntryUnit;
}

/** The lever ratios seen on vehicles, and the scatter allowed: as the plausibility check has them. */
const ratios = [0.8, 6] as const;
const scatterFactor = 3;

const quantityKinds: { readonly [Kind in EntryKind]: QuantityKind } = {
  length: "length",
  angle: "angle",
  mass: "mass",
  rate: "rate",
  damping: "damping",
  force: "force",
  roadSpeed: "roadSpeed",
  contactRate: "contactRate",
  number: "count",
};

function quantity(kind: EntryKind, value: number): Quantity {
  return { kind: quantityKinds[kind], value };
}

function isWithin(value: number, [least, greatest]: readonly [number, number]): boolean {
  return value >= least && value <= greatest;
}

function slip(value: number, unit: EntryUnit, known: ValueDefinition): Remark | null {
  if (known.kind !== "length") return null;
  if (unit === "mm" && isWithin(value * mmPerInch, known.believable)) {
    return {
      tone: "unsure",
      sentence: sentenceOf(messages.thatIsLessThan, { quantity: quantity("length", value) }),
      fix: "in",
    };
  }
  if (unit === "in" && isWithin(value / mmPerInch, known.believable)) {
    return {
      tone: "unsure",
      sentence: sentenceOf(messages.thatIsMoreThan, { quantity: quantity("length", value) }),
      fix: "mm",
    };
  }
  if (unit === "mm" && isWithin(value * mmPerCentimetre, known.believable)) {
    return {
      tone: "unsure",
      sentence: sentenceOf(messages.thatIsLessThanIs, { quantity: quantity("length", value) }),
    };
  }
  return null;
}

function outside(value: number, known: ValueDefinition): Remark | null {
  const [least, greatest] = known.believable;
  if (isWithin(value, known.believable)) return null;
  return {
    tone: "unsure",
    sentence: sentenceOf(messages.usuallySeenHereTo, {
      quantity: quantity(known.kind, least),
      quantity2: quantity(known.kind, greatest),
    }),
  };
}

/** What can be said of one value by itself, model's unit. */
export function valueRemark(
  id: ReadingId,
  value: number,
  unit: EntryUnit,
  kind = catalogueEntry(id),
): Remark | null {
  if (isBelievable(kind, value)) return null;
  return slip(value, unit, kind) ?? outside(value, kind);
}

/** What can be said of a reading's entry by itself. Nothing for an empty one. */
export function entryRemarks(stored: StoredCheck, id: ReadingId, entry: Entry): Remark[] {
  const outcome = readEntry(id, entry);
  if (!outcome.ok) {
    return outcome.fault.code === "entryEmpty"
      ? []
      : [{ tone: "no", sentence: outcome.fault.sentence }];
  }
  const known = catalogueEntry(id, limitKindOf(stored.record, id));
  const { values, tol } = outcome.value;
  const remarks: Remark[] = [];
  const odd = values
    .map((value) => valueRemark(id, value, entry.unit, known))
    .find((remark) => remark !== null);
  if (odd) remarks.push(odd);
  const scatter = Math.max(...values) - Math.min(...values);
  if (!odd && values.length > 1 && tol > 0 && scatter > scatterFactor * tol) {
    remarks.push({
      tone: "unsure",
      sentence: sentenceOf(messages.repeatsDifferByMore, {
        quantity: quantity(known.kind, scatter),
        quantity2: quantity(known.kind, tol),
      }),
    });
  }
  return remarks;
}

/** What can be said of a plain number. Nothing for an empty one. */
export function numberRemark(id: ReadingId, entry: Entry): Remark | null {
  const outcome = entryOutcome(id, entry);
  if (!outcome.ok) {
    return outcome.fault.code === "entryEmpty"
      ? null
      : { tone: "no", sentence: outcome.fault.sentence };
  }
  return typeof outcome.value === "number" ? valueRemark(id, outcome.value, entry.unit) : null;
}

function completeLayout(stored: StoredCheck): CheckLayout | null {
  const { layout } = stored.record;
  const readings = layout?.readings ?? {};
  const kind: LayoutKind | undefined = layout?.kind;
  const whole =
    kind !== undefined && neededReadings[kind].every((name) => readings[name] !== undefined);
  return whole ? ({ ...layout, kind, readings } as CheckLayout) : null;
}

/** What the geometry so far comes to: the lever ratio, or that these readings can't all be right. */
export function geometryRemark(stored: StoredCheck, id: ReadingId): Remark | null {
  const name = withoutSide(id);
  const readings = stored.record.layout?.readings;
  if (!readings || !(name in readings)) return null;
  const track = readings.track?.values[0];
  const spacing = readings.stopSpacing?.values[0];
  if (hasBeamAxle(stored) && track !== undefined && spacing !== undefined) {
    return spacing > track
      ? {
          tone: "unsure",
          sentence: [messages.stopsWouldStandFurther],
        }
      : null;
  }
  const layout = completeLayout(stored);
  if (!layout || neededReadings[layout.kind].length === 0) return null;
  const right = stored.record.corners.find((corner) => corner.side === "right");
  const kinematics = kinematicsOf(layout, id.startsWith("right.") ? right : {});
  const ratio = kinematics.ok ? kinematics.value.ratio(0) : kinematics;
  if (!ratio.ok) return { tone: "unsure", sentence: ratio.fault.sentence };
  const quantityOfRatio: Quantity = { kind: "ratio", value: ratio.value };
  return isWithin(ratio.value, ratios)
    ? { tone: "info", sentence: sentenceOf(messages.leverRatioSoFar, { quantityOfRatio }) }
    : {
        tone: "unsure",
        sentence: sentenceOf(messages.theseReadingsMakeLever, { quantityOfRatio }),
      };
}

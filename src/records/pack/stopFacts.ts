import {
  isProgressive,
  secantRate,
  stiffnessClassOf,
  stopCurve,
} from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { LengthUnit } from "../entry/units.ts";
import { mountingText } from "./mounting.ts";
import { isOffered, type PackStop } from "./pack.ts";
import { estimateBand, stopTitle } from "./stopTitle.ts";

/** Part number, height, stiffness by its number, duty, how it was tested, size and mounting: what tells one stop from another. */
export function stopFacts(stop: PackStop, unit: LengthUnit): string {
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const curve = stopCurve(stop);
  const stiffness = curve.ok
    ? messages.classProgressive({
        stiffnessClassOf: quantityText(
          { kind: "stiffnessClass", value: stiffnessClassOf(secantRate(curve.value)) },
          unit,
        ),
        isProgressive: Boolean(isProgressive(curve.value)),
      })
    : messages.classNotKnown;
  const tested = stop.testedAtSpeed ? messages.testedAtSpeed : messages.testedSlowlyOnly;
  return [
    ...(stop.partNumber ? [partText(stop)] : []),
    ...(isOffered(stop) ? [] : [stateText(stop)]),
    messages.highUsable({
      meanOf: length(meanOf(stop.freeHeight)),
      usableCompressionMm: length(stop.usableCompressionMm),
    }),
    stiffness,
    stop.duty === "carry" ? messages.supportsLoad : messages.forImpacts,
    stop.estimated
      ? messages.curveByEstimate({ estimateBand: estimateBand(stop.estimated) })
      : tested,
    ...(stop.outerDiameterMm === undefined
      ? []
      : [messages.across({ outerDiameterMm: length(stop.outerDiameterMm) })]),
    ...(stop.mount ? [mountingText(stop.mount, unit)] : stop.mounting ? [stop.mounting] : []),
    ...(stop.material ? [stop.material] : []),
  ].join(" · ");
}

/** "SL-060, revision B". */
export function partText({
  partNumber,
  revision,
  batch,
}: {
  readonly partNumber?: string | undefined;
  readonly revision?: string | undefined;
  readonly batch?: string | undefined;
}): string {
  return [
    partNumber ?? messages.noPartNumber,
    ...(revision ? [messages.revision({ revision })] : []),
    ...(batch ? [messages.batch({ batch })] : []),
  ].join(", ");
}

/** "Arm block, HL-1052, revision B, batch 2611": a stop by its name and as the part that it is. */
export function stopInFull(
  stop: Parameters<typeof stopTitle>[0] & Parameters<typeof partText>[0],
): string {
  return stop.partNumber === undefined ? stopTitle(stop) : `${stopTitle(stop)}, ${partText(stop)}`;
}

/** Whether it can be ordered. */
export function stateText({ state, replacedBy }: PackStop): string {
  if (replacedBy !== undefined) return messages.replacedBy3({ replacedBy });
  return state === "discontinued" ? "discontinued" : "offered";
}

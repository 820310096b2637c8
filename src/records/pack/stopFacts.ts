import { commaList, dotList, length, type Message, type Words } from "../../physics/sentence.ts";
import {
  isProgressive,
  secantRate,
  stiffnessClassOf,
  stopCurve,
} from "../../physics/stop/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import { mountingText } from "./mounting.ts";
import { isOffered, type PackStop } from "./pack.ts";
import { estimateBand, stopTitle } from "./stopTitle.ts";

/** Part number, height, stiffness by its number, duty, how it was tested, size and mounting: what tells one stop from another. */
export function stopFacts(stop: PackStop): Words {
  const curve = stopCurve(stop);
  const stiffness = curve.ok
    ? messages.classProgressive({
        stiffnessClassOf: {
          kind: "stiffnessClass",
          value: stiffnessClassOf(secantRate(curve.value)),
        },
        isProgressive: Boolean(isProgressive(curve.value)),
      })
    : messages.classNotKnown;
  const tested = stop.testedAtSpeed ? messages.testedAtSpeed : messages.testedSlowlyOnly;
  return dotList([
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
    ...(stop.mount ? [mountingText(stop.mount)] : stop.mounting ? [stop.mounting] : []),
    ...(stop.material ? [stop.material] : []),
  ]);
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
}): Words {
  return commaList([
    partNumber ?? messages.noPartNumber,
    ...(revision ? [messages.revision({ revision })] : []),
    ...(batch ? [messages.batch({ batch })] : []),
  ]);
}

/** "Arm block, HL-1052, revision B, batch 2611": a stop by its name and as the part that it is. */
export function stopInFull(
  stop: Parameters<typeof stopTitle>[0] & Parameters<typeof partText>[0],
): Words {
  const title = stopTitle(stop);
  return stop.partNumber === undefined ? title : commaList([title, partText(stop)]);
}

/** Whether it can be ordered. */
export function stateText({ state, replacedBy }: PackStop): Message {
  if (replacedBy !== undefined) return messages.replacedBy3({ replacedBy });
  return state === "discontinued" ? messages.discontinuedWord : messages.offeredWord;
}

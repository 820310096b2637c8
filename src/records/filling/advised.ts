import type { Prescription } from "../../physics/prescription/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { Say } from "../../words/message.ts";
import type { Advice, PartialCheckRecord } from "../check/checkRecord.ts";
import type { Pack } from "../pack/pack.ts";
import { stopTitle } from "../pack/stopTitle.ts";

/** What the app prescribed for the measured sides of a check, as it is kept in the record, in words of `say`. */
export function adviceOf(
  prescription: Prescription,
  { corners }: Pick<PartialCheckRecord, "corners">,
  { name: pack, edition }: Pick<Pack, "name" | "edition">,
  say: Say,
  now: Date = new Date(),
): Advice {
  const shown = {
    at: now.toISOString(),
    sides: corners.map(({ side }) => side),
    pack,
    ...(edition !== undefined && { edition }),
  };
  if (prescription.none) return shown;
  const { candidate, change, spacerMm, stopRateClass, verdict } = prescription;
  const { partNumber, revision } = candidate.stop;
  return {
    ...shown,
    part: {
      name: say(stopTitle(candidate.stop)),
      ...(partNumber !== undefined && { partNumber }),
      ...(revision !== undefined && { revision }),
      spacerMm,
      heightMm: meanOf(candidate.stop.freeHeight),
      stopRateClass,
      change,
      verdict,
    },
  };
}

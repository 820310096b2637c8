import { type Message, spacer, type Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/review.ts";
import { dateText } from "../check/checkName.ts";
import type { Advice } from "../check/checkRecord.ts";
import { stopInFull } from "../pack/stopFacts.ts";

/** "Tall firm, HL-3130, revision B, spacer 15.0 mm": what an answer prescribed. */
export function adviceWords({ part }: Advice): Words {
  if (part === undefined) return messages.noPartPrescribed;
  const { partNumber, change, spacerMm, stopRateClass } = part;
  const stop = stopInFull(part);
  if (change === "nothing") return messages.nothingToChange({ stopInFull: stop });
  const scaled = partNumber === undefined && change !== "spacer";
  const built = scaled
    ? messages.ofClass({ stop, stopRateClass: { kind: "stiffnessClass", value: stopRateClass } })
    : stop;
  return spacerMm > 0 ? messages.withSpacer({ stop: built, value: spacer(spacerMm) }) : built;
}

/** When it was shown, for which side where it was one, and by which parts library. */
export function adviceGiven({ at, sides: [side, other], pack, edition }: Advice): Message {
  return messages.adviceGiven({
    at: dateText(at),
    isSide: side !== undefined && other === undefined,
    side,
    isLibrary: pack !== undefined,
    pack,
    isEdition: pack !== undefined && edition !== undefined,
    edition,
  });
}

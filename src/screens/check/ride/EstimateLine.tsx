import type { RideQuantity } from "../../../physics/fitment.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { estimateOf } from "../../../records/filling/withEstimates.ts";
import { inModelUnits } from "../../../saying/modelUnits.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import { filled } from "../../filled.ts";
import { Notice } from "../../parts/Notice.tsx";
import type { Preferences } from "../../preferences.ts";
import { referencePack } from "../../referencePack.ts";
import { rideRange } from "./rideText.ts";

/** What an estimate comes to, marked as one, or what it still needs. */
export function EstimateLine({
  stored,
  name,
  preferences,
  lead = "",
}: {
  stored: StoredCheck;
  name: RideQuantity;
  preferences: Preferences;
  lead?: string;
}) {
  const outcome = estimateOf(stored, name, referencePack());
  if (!outcome) return null;
  if (!outcome.ok) {
    const waiting = outcome.fault.code === "estimateIncomplete";
    return (
      <Notice tone={waiting ? "info" : "no"} live>
        <p>{sentenceText(outcome.fault.sentence, preferences.length)}</p>
      </Notice>
    );
  }
  const { value, tol, how } = outcome.value;
  return (
    <Notice tone="care" live>
      <p>
        {filled(messages.estimatedWidensAnswersMargin, {
          lead,
          rideRange: <strong>{rideRange(name, value, tol, preferences)}</strong>,
          how: inModelUnits(how),
        })}
      </p>
    </Notice>
  );
}

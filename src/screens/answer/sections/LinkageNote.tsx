import type { Assessment } from "../../../physics/fitment.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { hasLinkageQuestion } from "../../../records/filling/askedGeometry.ts";
import { armRoleChoice, hasArm } from "../../../records/filling/layoutChoices.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { Button } from "../../parts/Button.tsx";
import { Notice } from "../../parts/Notice.tsx";

/**
 * How the wheel's travel was come by, where that can be sharpened; and that the figures of a check begun
 * before this was asked changed because the model did. Nothing else.
 */
export function LinkageNote({
  stored,
  assessment,
  go,
}: {
  readonly stored: StoredCheck;
  readonly assessment: Assessment;
  readonly go: (step: string) => void;
}) {
  const earlier = hasArm(stored) && armRoleChoice(stored) === null;
  const usual = assessment.corners.some(({ linkage }) => linkage === "prior");
  const leaning = assessment.corners.some(({ linkage }) => linkage === "straight");
  if (!earlier && !usual && !leaning) return null;
  const step = earlier || !hasLinkageQuestion(stored) ? "layout" : "linkage";
  return (
    <Notice tone="info">
      {earlier && <p>{messages.thisCheckWasStarted}</p>}
      {usual && <p>{messages.howWheelMovesWith}</p>}
      {leaning && <p>{messages.howWheelMovesIs}</p>}
      <div class="row">
        <Button icon="forward" onClick={() => go(step)}>
          {step === "layout"
            ? messages.sayWhichArmIt
            : leaning
              ? messages.measureArmToo
              : messages.measureOtherArmToo}
        </Button>
      </div>
    </Notice>
  );
}

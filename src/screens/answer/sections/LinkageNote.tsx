import type { Assessment } from "../../../physics/fitment.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { hasLinkageQuestion } from "../../../records/filling/askedGeometry.ts";
import { armRoleChoice, hasArm } from "../../../records/filling/layoutChoices.ts";
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
      {earlier && (
        <p>
          This check was started with an earlier way of computing, so its figures have changed. Say
          which arm it is, and make sure its lengths were taken square to the pivot line.
        </p>
      )}
      {usual && <p>How the wheel moves with this arm is taken from typical vehicles.</p>}
      {leaning && <p>How the wheel moves is taken from the strut's lean alone.</p>}
      <div class="row">
        <Button icon="forward" onClick={() => go(step)}>
          {step === "layout"
            ? "Say which arm it is"
            : leaning
              ? "Measure the arm too"
              : "Measure the other arm too"}
        </Button>
      </div>
    </Notice>
  );
}

import type { LimitKind, Side } from "../../physics/fitment.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { limitTitles } from "../readings/limitWords.ts";
import { limitKinds, withLimit, withLimitsOfLeft, withNoLimits, withoutLimit } from "./limits.ts";

const hints: { readonly [Kind in LimitKind]: string } = {
  tyre: "Tread against arch, liner or guard.",
  damper: "The damper at the end of its own travel.",
  spring: "Coils that touch each other, or a leaf on its block.",
  metal: "Arm, axle or bracket against frame.",
  other: "Exhaust, driveshaft, sway bar, brake line.",
};

export function LimitsStep({ stored, change, step }: StepProps) {
  const side: Side = step.id.startsWith("right") ? "right" : "left";
  const limits = stored.record.corners.find((corner) => corner.side === side)?.limits ?? [];
  const left = stored.record.corners.find((corner) => corner.side === "left")?.limits ?? [];
  const none = chosen(stored, step.id) === "none";
  return (
    <>
      <p>
        Push the wheel up in your mind: what would be touched, besides the stop? Tick all that come
        near. Each is measured next.
      </p>
      {side === "right" && limits.length === 0 && left.length > 0 && !none && (
        <Button wide onClick={() => change(withLimitsOfLeft)}>
          The same as on the left
        </Button>
      )}
      <div class="choices">
        {limitKinds.map((kind) => (
          <CheckLine
            key={kind}
            checked={limits.some((limit) => limit.kind === kind)}
            hint={hints[kind]}
            onChange={(checked) =>
              change((current) =>
                checked ? withLimit(current, side, kind) : withoutLimit(current, side, kind),
              )
            }
          >
            {limitTitles[kind]}
          </CheckLine>
        ))}
        <CheckLine
          checked={none}
          hint="Then nobody can say what touches first."
          onChange={(checked) =>
            change((current) =>
              checked ? withNoLimits(current, side) : withChoice(current, step.id, null),
            )
          }
        >
          None can be reached or is known
        </CheckLine>
      </div>
      {none && (
        <Notice tone="unsure" live>
          <p>
            Without one clearance the answer can't say whether something harder touches before the
            stop has done its work. The verdict will be “not sure” on that.
          </p>
        </Notice>
      )}
    </>
  );
}

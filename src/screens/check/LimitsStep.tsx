import type { LimitKind, Side } from "../../physics/fitment.ts";
import { limitKinds } from "../../physics/readings/index.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { limitTitles } from "../readings/limitWords.ts";
import { withLimit, withLimitsOfLeft, withNoLimits, withoutLimit } from "./limits.ts";

const hints: { readonly [Kind in LimitKind]: string } = {
  tyre: "Tread against fender, liner or guard.",
  damper: "The shock at the end of its own travel.",
  spring: "Coils that touch each other, or a leaf on its block.",
  metal: "Arm, axle or bracket against frame.",
  other: "Exhaust, driveshaft, anti-roll bar, brake line.",
};

export function LimitsStep({ stored, change, step }: StepProps) {
  const side: Side = step.id.startsWith("right") ? "right" : "left";
  const limits = stored.record.corners.find((corner) => corner.side === side)?.limits ?? [];
  const left = stored.record.corners.find((corner) => corner.side === "left")?.limits ?? [];
  const none = chosen(stored, step.id) === "none";
  return (
    <>
      <p>
        As the wheel moves up, what could hit before the stop is fully compressed?{" "}
        <span class="known-lead">
          Tick everything that comes close. You'll measure each one next.
        </span>
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
          hint="The answer then can't say what touches first."
          onChange={(checked) =>
            change((current) =>
              checked ? withNoLimits(current, side) : withChoice(current, step.id, null),
            )
          }
        >
          I can't measure any of these
        </CheckLine>
      </div>
      {none && (
        <Notice tone="unsure" live>
          <p>
            Without a clearance the answer can't say whether anything hits before the stop is fully
            compressed. It will say “not sure” there.
          </p>
        </Notice>
      )}
    </>
  );
}

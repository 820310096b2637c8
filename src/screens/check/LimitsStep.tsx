import type { LimitKind } from "../../physics/fitment.ts";
import { limitKinds, sideOf } from "../../physics/readings/index.ts";
import { chosen, withChoice } from "../../records/filling/choice.ts";
import {
  withLimit,
  withLimitsOfLeft,
  withNoLimits,
  withoutLimit,
} from "../../records/filling/limitsLookedAt.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { limitTitles } from "../readings/limitWords.ts";

const hints: { readonly [Kind in LimitKind]: string } = {
  tyre: messages.treadAgainstFenderLiner,
  damper: messages.shockAtEndOf,
  spring: messages.coilsThatTouchEach,
  metal: messages.armAxleOrBracket,
  other: messages.exhaustDriveshaftAntiRoll,
};

export function LimitsStep({ stored, change, step }: StepProps) {
  const side = sideOf(step.id) ?? "left";
  const limits = stored.record.corners.find((corner) => corner.side === side)?.limits ?? [];
  const left = stored.record.corners.find((corner) => corner.side === "left")?.limits ?? [];
  const none = chosen(stored, `${side}.limits`) === "none";
  return (
    <>
      <p>
        {messages.asWheelMovesUp} <span class="known-lead">{messages.tickEverythingThatComes}</span>
      </p>
      {side === "right" && limits.length === 0 && left.length > 0 && !none && (
        <Button wide onClick={() => change(withLimitsOfLeft)}>
          {messages.sameAsOnLeft}
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
          hint={messages.answerThenCantSay}
          onChange={(checked) =>
            change((current) =>
              checked ? withNoLimits(current, side) : withChoice(current, `${side}.limits`, null),
            )
          }
        >
          {messages.iCantMeasureAny}
        </CheckLine>
      </div>
      {none && (
        <Notice tone="unsure" live>
          <p>{messages.withoutClearanceAnswerCant}</p>
        </Notice>
      )}
    </>
  );
}

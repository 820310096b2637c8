import { useMemo } from "preact/hooks";
import type { Assessor } from "../../compute/assessor.ts";
import type { Assessment, Fitment } from "../../physics/fitment.ts";
import type { ReadingId } from "../../physics/readings/index.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { toolsAtHand } from "../../records/entry/toolsAtHand.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { openReading, startWalk } from "../../records/remeasure/remeasureWalk.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said, worded } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { Button } from "../parts/Button.tsx";
import { Forecast } from "./Forecast.tsx";
import { useRemeasurePlan } from "./useRemeasurePlan.ts";

const none: readonly ReadingId[] = [];

/** In the answer: what taking readings again would do, and the way into it. */
export function RemeasureOffer({
  stored,
  assessor,
  fitment,
  assessment,
  unit,
  go,
  onChange,
}: {
  stored: StoredCheck;
  assessor: Assessor;
  fitment: Fitment;
  /** Complete. */
  assessment: Assessment;
  unit: LengthUnit;
  go: (step: string) => void;
  onChange: (stored: StoredCheck) => void;
}) {
  const tools = useMemo(() => toolsAtHand(stored), [stored.entries]);
  const plan = useRemeasurePlan(assessor, fitment, assessment, tools, none);
  if (!plan || plan.level === null) return null;
  const { level, items } = plan;
  const start = () => {
    const [first] = items;
    if (!first) return;
    onChange(openReading(startWalk(stored, level), first, items.length, { said, worded }));
    go(first.reading);
  };
  const count = items.length;
  return (
    <div class="stack-close">
      {plan.otherwise && <p>{sentenceText(plan.otherwise, unit)}</p>}
      {count > 0 && (
        <>
          <Forecast plan={plan} unit={unit} />
          <Button look="main" wide onClick={start}>
            {messages.reMeasure1Reading({ count })}
          </Button>
        </>
      )}
    </div>
  );
}

import { stopFaults } from "../../../records/check/recordRules.ts";
import { entryOutcome } from "../../../records/entry/entryPath.ts";
import { withTestedAtSpeed } from "../../../records/filling/testedAtSpeed.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { useSettled } from "../settled.ts";
import { TableEntry } from "./TableEntry.tsx";

const id = "stop.damping";

/** Whether the stop was tested at speed, and its damping where it was. */
export function StopDamping({
  stored,
  change,
  preferences,
}: Pick<StepProps, "stored" | "change" | "preferences">) {
  const { stop } = stored.record;
  const tested = stop?.testedAtSpeed;
  const entry = stored.entries[id];
  const settled = useSettled(JSON.stringify(entry ?? null));
  const outcome = entry && settled && tested ? entryOutcome(id, entry) : null;
  const unreadable =
    outcome && !outcome.ok && outcome.fault.code !== "entryEmpty" ? outcome.fault : null;
  const fault =
    unreadable ?? (settled ? stopFaults(stop ?? {}).find(({ reading }) => reading === id) : null);
  return (
    <>
      <Choices
        legend={messages.wasItTestedAt}
        value={tested === undefined ? null : tested ? "speed" : "slow"}
        onChange={(value) => change((current) => withTestedAtSpeed(current, value === "speed"))}
        options={[
          {
            value: "slow",
            name: messages.onlyPressedSlowlyOr,
            hint: messages.impactsAreThenWorked,
          },
          {
            value: "speed",
            name: messages.atSeveralSpeedsAnd,
            hint: messages.itsDampingInAnd,
          },
        ]}
      />
      {tested && (
        <>
          <p class="small">{messages.slowTestSaysNothing}</p>
          <TableEntry
            id={id}
            kind="damping"
            caption={{ name: messages.damping, within: messages.dampingWithin }}
            columns={[
              {
                name: messages.pressedBy,
                within: messages.pressedByWithin,
                metric: "mm",
                inches: "in",
              },
              {
                name: messages.goingIn,
                within: messages.goingInWithin,
                metric: "N·s/mm",
                inches: "lbf·s/in",
              },
              {
                name: messages.comingOut,
                within: messages.comingOutWithin,
                metric: "N·s/mm",
                inches: "lbf·s/in",
              },
            ]}
            startRows={3}
            stored={stored}
            change={change}
            preferences={preferences}
          />
        </>
      )}
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, preferences.length)}</p>
        </Notice>
      )}
    </>
  );
}

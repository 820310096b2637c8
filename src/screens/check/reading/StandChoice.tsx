import { parseReadingId, sideOf, standingNames } from "../../../physics/readings/index.ts";
import { chooseStand, type Stand, standOf, standReading } from "../../../records/filling/stand.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { StandPicture } from "../../drawings/choices/StandPicture.tsx";
import type { StepProps } from "../../guide/stepProps.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { wordedLayout } from "../../readings/readingWords.ts";

const stands: readonly { value: Stand; name: string }[] = [
  { value: "gap", name: messages.gap },
  { value: "touching", name: messages.touching },
  { value: "pressed", name: messages.pressed },
  { value: "missing", name: messages.noStopOrRuined },
];

/** Does this step ask how the stop stands? */
export function isStandStep(id: string): boolean {
  const place = parseReadingId(id);
  return place?.of === "corner" && standingNames.some((name) => name === place.name);
}

/** How the stop stands on this side, by picture; what is measured follows from it. */
export function StandChoice({
  stored,
  change,
  step,
  go,
}: Pick<StepProps, "stored" | "change" | "step" | "go">) {
  const side = sideOf(step.id) ?? "left";
  const stand = standOf(stored, side);
  const { kind, stopOn } = wordedLayout(stored.record);
  return (
    <>
      <div class="layout-choices stand-choices">
        <Choices
          legend={messages.howDoesStopStand}
          value={stand}
          onChange={(chosen) => {
            change((current) => chooseStand(current, side, chosen));
            const id = standReading(side, chosen);
            if (id !== step.id) go(id);
          }}
          options={stands.map((each) => ({
            ...each,
            picture: <StandPicture kind={kind} stopOn={stopOn} stand={each.value} />,
          }))}
        />
      </div>
      {(stand === "pressed" || stand === "touching") && (
        <Notice tone="care">
          <p>{messages.itRestsOnIts}</p>
        </Notice>
      )}
    </>
  );
}

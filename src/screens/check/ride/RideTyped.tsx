import type { ComponentChildren } from "preact";
import type { RideQuantity } from "../../../physics/fitment.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import * as messages from "../../../words/compiled/screens/check/ride.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Notice } from "../../parts/Notice.tsx";
import { numberRemark } from "../remarks.ts";
import { useSettled } from "../settled.ts";
import { TolerancedEntry } from "./TolerancedEntry.tsx";

/** A ride quantity typed with its ±. */
export function RideTyped({
  stored,
  change,
  preferences,
  name,
  label,
  hint,
}: Pick<StepProps, "stored" | "change" | "preferences"> & {
  name: RideQuantity;
  label: ComponentChildren;
  hint?: ComponentChildren;
}) {
  const id = `ride.${name}` as const;
  const entry = stored.entries[id];
  const settled = useSettled(`${id}|${entry?.texts[0]}|${entry?.unit}`);
  const remark = settled && entry ? numberRemark(id, entry) : null;
  const estimated = stored.record.ride?.estimated?.[name];
  return (
    <div class="stack-close">
      <TolerancedEntry
        input={{ id, kind: catalogueEntry(id).kind, usualTolerance: () => 0 }}
        stored={stored}
        change={change}
        preferences={preferences}
        label={label}
        hint={hint}
        usual="0"
      />
      {estimated && <p class="small soft">{messages.inThisCheckIt({ estimated })}</p>}
      {remark && remark.tone !== "no" && (
        <Notice tone={remark.tone} live>
          <p>{sentenceText(remark.sentence, preferences.length)}</p>
        </Notice>
      )}
    </div>
  );
}

import { geometryRegistry, isGeometryReadingName } from "../../../physics/readings/index.ts";
import { askedGeometry, askedLinkage } from "../../../records/filling/askedGeometry.ts";
import { chooseMaking, isMadeOfParts, readingMadeOf } from "../../../records/filling/makings.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import { Known } from "../../guide/Known.tsx";
import type { StepProps } from "../../guide/stepProps.ts";
import { Segmented } from "../../parts/Choices.tsx";

const ways = {
  bolts: {
    legend: messages.howDoYouTake,
    direct: messages.squareToPivotLine,
    parts: messages.fromBothBoltsBy,
  },
  heights: {
    legend: messages.howDoYouTakeArms,
    direct: messages.gaugeOrPhone,
    parts: messages.byTwoHeightsBy,
  },
} as const;

/** The two ways to come by a length or an angle of an arm. Nothing on readings that have one only. */
export function MakingChoice({
  stored,
  change,
  step,
  go,
}: Pick<StepProps, "stored" | "change" | "step" | "go">) {
  const prefix = step.id.startsWith("right.") ? "right." : "";
  const name = step.id.slice(prefix.length);
  const made = isGeometryReadingName(name) ? readingMadeOf(stored, name) : null;
  const by = made === null ? undefined : geometryRegistry[made].madeOf?.by;
  if (made === null || by === undefined) return null;
  const parts = isMadeOfParts(stored, by);
  const words = ways[by];
  return (
    <Known summary={messages.taken({ by, parts })}>
      <Segmented
        legend={words.legend}
        value={parts ? "parts" : "direct"}
        onChange={(value) => {
          if ((value === "parts") === parts) return;
          const changed = chooseMaking(stored, by, value === "parts");
          change((current) => chooseMaking(current, by, value === "parts"));
          const asked = [...askedGeometry(changed), ...askedLinkage(changed)];
          const first = asked.find((each) => readingMadeOf(changed, each) === made) ?? made;
          go(`${prefix}${first}`);
        }}
        options={[
          { value: "direct", name: words.direct },
          { value: "parts", name: words.parts },
        ]}
      />
    </Known>
  );
}

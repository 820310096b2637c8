import { askedRightGeometry } from "../../records/filling/askedGeometry.ts";
import { chooseRightGeometry } from "../../records/filling/changes.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { Known } from "../guide/Known.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";
import { readingWords, wordedLayout } from "../readings/readingWords.ts";

export function RightGeometryStep({ stored, change }: StepProps) {
  const names = askedRightGeometry(stored).map((name) =>
    readingWords(name, wordedLayout(stored.record)).name.toLowerCase(),
  );
  return (
    <>
      <Choices
        legend={messages.arePartsOnRight}
        value={stored.progress.rightGeometry}
        onChange={(choice) => change((current) => chooseRightGeometry(current, choice))}
        options={[
          {
            value: "same",
            name: messages.sameAsLeft,
            hint: messages.sameArmsAndBrackets,
          },
          {
            value: "own",
            name: messages.measureRightSideToo,
            hint: messages.afterAccidentOrWhere,
          },
        ]}
      />
      <Known summary={messages.whatIsCopied}>
        <p class="small soft">{messages.thisIsAboutGap({ names: names.join(", ") })}</p>
      </Known>
    </>
  );
}

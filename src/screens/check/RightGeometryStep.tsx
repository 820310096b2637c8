import { commaList } from "../../physics/sentence.ts";
import { entryName } from "../../records/entry/readingCatalogue.ts";
import { askedRightGeometry } from "../../records/filling/askedGeometry.ts";
import { chooseRightGeometry } from "../../records/filling/changes.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/check.ts";
import { Known } from "../guide/Known.tsx";
import type { StepProps } from "../guide/stepProps.ts";
import { Choices } from "../parts/Choices.tsx";

export function RightGeometryStep({ stored, change }: StepProps) {
  const names = askedRightGeometry(stored).map((reading) => entryName(reading));
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
        <p class="small soft">{messages.thisIsAboutGap({ names: said(commaList(names)) })}</p>
      </Known>
    </>
  );
}

import { askedRightGeometry } from "../../records/filling/askedGeometry.ts";
import { chooseRightGeometry } from "../../records/filling/changes.ts";
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
        legend="Are the parts on the right the same as on the left?"
        value={stored.progress.rightGeometry}
        onChange={(choice) => change((current) => chooseRightGeometry(current, choice))}
        options={[
          {
            value: "same",
            name: "Same as left",
            hint: "Same arms and brackets, nothing bent: the distances and angles are copied.",
          },
          {
            value: "own",
            name: "Measure the right side too",
            hint: "After an accident, or where left and right differ by design.",
          },
        ]}
      />
      <Known summary="What is copied">
        <p class="small soft">
          This is about {names.join(", ")}. Gap and clearances are always measured on each side.
        </p>
      </Known>
    </>
  );
}

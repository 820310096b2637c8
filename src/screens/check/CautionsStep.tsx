import * as messages from "../../words/compiled/screens/check.ts";
import { CautionPicture } from "../drawings/CautionPicture.tsx";
import { cautionsOf, raisedCautions } from "../guide/cautions.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { cautionLevel, cautionsHold } from "../guide/steps.ts";
import { Notice } from "../parts/Notice.tsx";
import { ReadThrough } from "./ReadThrough.tsx";

/** The cautions, read as one list and acknowledged together; a vehicle raised since is asked anew. */
export function CautionsStep({ stored, waiting }: StepProps) {
  const level = cautionLevel(stored);
  const held = cautionsHold(stored);
  return (
    <>
      {waiting && (
        <Notice tone="care">
          <p>{messages.readTheseBeforeYou({ waiting: waiting.replace(/[?.]$/, "") })}</p>
        </Notice>
      )}
      <ReadThrough
        lines={cautionsOf(level).map(({ id, picture, words }) => ({
          id,
          picture: <CautionPicture caution={picture} />,
          words,
          stressed: raisedCautions.some((each) => each.id === id),
        }))}
      />
      {held && (
        <p class="small soft" role="status">
          {messages.allAcknowledged}
        </p>
      )}
    </>
  );
}

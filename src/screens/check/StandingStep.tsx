import { StandingPicture } from "../drawings/StandingPicture.tsx";
import { standingSteps } from "../guide/standing.ts";
import { ReadThrough } from "./ReadThrough.tsx";

/** How the vehicle has to stand. Level ground and chocks are cautions, read before. */
export function StandingStep() {
  return (
    <>
      <p class="soft">A reading is only as good as the way the vehicle stands.</p>
      <ReadThrough
        lines={standingSteps.map(({ id, words, hint }) => ({
          id,
          picture: <StandingPicture step={id} />,
          words,
          hint,
        }))}
      />
    </>
  );
}

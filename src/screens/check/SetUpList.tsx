import { changeProgress } from "../../records/check/storedCheck.ts";
import { StandingPicture } from "../drawings/StandingPicture.tsx";
import { standingSteps } from "../guide/standing.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { CheckLine } from "../parts/Choices.tsx";

/** How the vehicle has to stand. Level ground and chocks are cautions, ticked above. */
export function SetUpList({ stored, change }: Pick<StepProps, "stored" | "change">) {
  const { stood } = stored.progress;
  return (
    <section aria-labelledby="set-up">
      <h2 id="set-up">Set up the vehicle</h2>
      <p class="soft">A reading is only as good as the way the vehicle stands. Tick each item.</p>
      <div class="choices">
        {standingSteps.map(({ id, words, hint }) => (
          <CheckLine
            key={id}
            checked={stood.includes(id)}
            hint={hint}
            picture={
              <span class="standing-picture" aria-hidden="true">
                <StandingPicture step={id} />
              </span>
            }
            onChange={(checked) =>
              change((current) => {
                const others = current.progress.stood.filter((each) => each !== id);
                return changeProgress(current, { stood: checked ? [...others, id] : others });
              })
            }
          >
            {words}
          </CheckLine>
        ))}
      </div>
    </section>
  );
}

import { changeProgress, type StoredCheck } from "../../records/check/storedCheck.ts";
import { CautionPicture } from "../drawings/CautionPicture.tsx";
import { cautionsOf, raisedCautions } from "../guide/cautions.ts";
import type { StepProps } from "../guide/stepProps.ts";
import { cautionLevel, cautionsHold } from "../guide/steps.ts";
import { CheckLine } from "../parts/Choices.tsx";
import { Notice } from "../parts/Notice.tsx";
import { SetUpList } from "./SetUpList.tsx";

const ticksId = "cautions";

/** The cautions ticked so far; all of them where they were acknowledged before for this height. */
function tickedCautions(stored: StoredCheck): readonly string[] {
  const level = cautionLevel(stored);
  if (cautionsHold(stored)) return cautionsOf(level).map(({ id }) => id);
  return stored.entries[ticksId]?.texts ?? [];
}

function withTick(stored: StoredCheck, id: string, ticked: boolean): StoredCheck {
  const level = cautionLevel(stored);
  const others = tickedCautions(stored).filter((each) => each !== id);
  const texts = ticked ? [...others, id] : others;
  const whole = cautionsOf(level).every((caution) => texts.includes(caution.id));
  // Once all are acknowledged no tick is left over that a raised vehicle could inherit.
  const entry = { texts: whole ? [] : texts, unit: "", tol: "" } as const;
  return changeProgress(
    { ...stored, entries: { ...stored.entries, [ticksId]: entry } },
    { cautionsFor: whole ? level : null },
  );
}

/** Every caution is acknowledged by itself; a vehicle raised since is asked anew. */
export function CautionsStep({ stored, change, waiting }: StepProps) {
  const level = cautionLevel(stored);
  const ticked = tickedCautions(stored);
  const cautions = cautionsOf(level);
  const open = cautions.filter(({ id }) => !ticked.includes(id)).length;
  return (
    <>
      {waiting && (
        <Notice tone="care">
          <p>Read and tick these before you go to the vehicle. Next: {waiting}.</p>
        </Notice>
      )}
      {level === "raised" && stored.progress.cautionsFor !== "raised" && (
        <Notice tone="care" live>
          <p>This vehicle is raised. Cautions for raised vehicles come first.</p>
        </Notice>
      )}
      <p class="soft">Tick each one to confirm. All are needed before you measure.</p>
      <div class="choices">
        {cautions.map(({ id, picture, words }) => (
          <CheckLine
            key={id}
            checked={ticked.includes(id)}
            picture={
              <span class="standing-picture" aria-hidden="true">
                <CautionPicture caution={picture} />
              </span>
            }
            onChange={(checked) => change((current) => withTick(current, id, checked))}
          >
            <span class={raisedCautions.some((each) => each.id === id) ? "caution-raised" : ""}>
              {words}
            </span>
          </CheckLine>
        ))}
      </div>
      <p class="small soft" role="status">
        {open === 0 ? "All acknowledged." : `${open} of ${cautions.length} still to tick.`}
      </p>
      <SetUpList stored={stored} change={change} />
    </>
  );
}

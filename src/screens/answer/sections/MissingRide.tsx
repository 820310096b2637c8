import type { Assessment, RideQuantity } from "../../../physics/fitment.ts";
import { bareReadingName } from "../../../physics/readingNames.ts";
import { capital } from "../../../physics/sentence.ts";
import { missingId } from "../../../physics/verdict/index.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { Button } from "../../parts/Button.tsx";

type Missing = RideQuantity | "cornerMassKg";

const forRoad: readonly Missing[] = [
  "cornerMassKg",
  "tyreRateNPerMm",
  "damperBumpNsPerMm",
  "damperReboundNsPerMm",
];
const forLoad: readonly Missing[] = ["payloadPerCornerKg", "wheelRateNPerMm"];

/** What the answer cannot say for want of ride data, and the steps that ask for them. */
export function MissingRide({
  assessment,
  go,
}: {
  assessment: Assessment;
  go: (step: string) => void;
}) {
  const steps = new Map<string, string>();
  const names = new Set<Missing>();
  for (const { side, missing } of assessment.corners) {
    for (const name of missing) {
      names.add(name);
      const id = missingId(name, side);
      steps.set(id, said(bareReadingName(id)));
    }
  }
  if (names.size === 0) return null;
  const unsaid = [
    ...(forRoad.some((name) => names.has(name)) ? [messages.howOftenWheelReachesStop] : []),
    ...(forLoad.some((name) => names.has(name)) ? [messages.howLoadChangesIt] : []),
    messages.howHardImpactIs,
    messages.whichStiffnessWorks,
  ];
  return (
    <section class="card">
      <h2>{messages.whatAnswerCantSay}</h2>
      <p>{messages.forThatWeighLook({ listed: capital(listed(unsaid)) })}</p>
      <ul class="missing-list">
        {[...steps].map(([id, words]) => (
          <li key={id}>
            <Button wide icon="forward" onClick={() => go(id)}>
              {capital(words)}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join("")
    : messages.and({ words: words.slice(0, -1).join(", "), last: words.at(-1) ?? "" });
}

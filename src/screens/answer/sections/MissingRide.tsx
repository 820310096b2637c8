import type { Assessment, RideQuantity } from "../../../physics/fitment.ts";
import { capital } from "../../../physics/sentence.ts";
import { missingId } from "../../../physics/verdict/index.ts";
import { catalogueEntry } from "../../../records/entry/readingCatalogue.ts";
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
      steps.set(id, `${name === "cornerMassKg" ? `${side} ` : ""}${catalogueEntry(id).name}`);
    }
  }
  if (names.size === 0) return null;
  const unsaid = [
    ...(forRoad.some((name) => names.has(name)) ? ["how often the wheel reaches the stop"] : []),
    ...(forLoad.some((name) => names.has(name)) ? ["how the load changes it"] : []),
    "how hard an impact is",
    "which stiffness works",
  ];
  return (
    <section class="card">
      <h2>What the answer can't say yet</h2>
      <p>{capital(listed(unsaid))}. For that, weigh, look up or estimate:</p>
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
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

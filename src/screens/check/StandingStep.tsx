import { useState } from "preact/hooks";
import * as messages from "../../words/compiled/screens/check.ts";
import { StandingPicture } from "../drawings/StandingPicture.tsx";
import { isPractised } from "../guide/practice.ts";
import { standingSteps } from "../guide/standing.ts";
import { Disclosure } from "../parts/Disclosure.tsx";
import { ReadThrough } from "./ReadThrough.tsx";

/** How the vehicle has to stand. Level ground and chocks are cautions, read before. */
export function StandingStep() {
  const [practised] = useState(isPractised);
  return (
    <>
      {!practised && <p class="soft">{messages.readingIsOnlyAs}</p>}
      <ReadThrough
        lines={standingSteps.map(({ id, words, hint }) => ({
          id,
          picture: <StandingPicture step={id} />,
          words,
          ...(!practised && { hint }),
        }))}
      />
      {practised && (
        <Disclosure summary={messages.whatThatMeans}>
          <ul class="plain-list">
            {standingSteps.map(({ id, words, hint }) => (
              <li key={id}>
                {words}: {hint}
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  );
}

import * as messages from "../../words/compiled/screens/check.ts";
import { partsOf, placeInCheck, placeWords } from "../guide/placeInCheck.ts";
import type { Step } from "../guide/steps.ts";

/** Where one is: a bar of parts, each as full as it is done; their number stays. */
export function ProgressBar({ all, at }: { all: readonly Step[]; at: number }) {
  const place = placeInCheck(all, at);
  if (!place) return null;
  return (
    <div class="progress">
      <p class="progress-words">
        <span>{placeWords(place)}</span>
        <span>{messages.partOf({ part: place.part, parts: place.parts })}</span>
      </p>
      <div class="progress-bar" aria-hidden="true">
        {partsOf(all).map((section) => {
          const own = all.filter((each) => each.section === section);
          const done = own.filter((each) => each.state === "done").length;
          return (
            <span
              key={section}
              class={section === place.section ? "progress-part progress-here" : "progress-part"}
            >
              <span style={{ width: `${own.length === 0 ? 0 : (100 * done) / own.length}%` }} />
            </span>
          );
        })}
      </div>
    </div>
  );
}

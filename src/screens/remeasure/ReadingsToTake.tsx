import type { ComponentChildren } from "preact";
import * as messages from "../../words/compiled/screens/remeasure.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import { ButtonLink } from "../parts/Button.tsx";
import "./remeasure.css";

export interface ReadingToTake {
  readonly id: string;
  readonly name: string;
  /** Null where there is nowhere to go: a reading that is done with. */
  readonly href: string | null;
  readonly done: boolean;
  readonly detail?: ComponentChildren;
}

/** Readings to take again, in order, with what is done of them. */
export function ReadingsToTake({
  readings,
  more,
}: {
  readings: readonly ReadingToTake[];
  more?: (reading: ReadingToTake) => ComponentChildren;
}) {
  return (
    <ol class="readings-to-take">
      {readings.map((reading) => {
        const name = (
          <>
            {reading.done && <StateMark state="ok" size={22} label={messages.reMeasured} />}
            {reading.name}
          </>
        );
        return (
          <li key={reading.id}>
            {reading.href === null ? (
              <p class="reading-taken">{name}</p>
            ) : (
              <ButtonLink wide href={reading.href}>
                {name}
              </ButtonLink>
            )}
            {reading.detail && <p class="small">{reading.detail}</p>}
            {more?.(reading)}
          </li>
        );
      })}
    </ol>
  );
}

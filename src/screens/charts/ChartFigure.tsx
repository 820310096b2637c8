import type { ComponentChildren } from "preact";
import * as messages from "../../words/compiled/screens/charts.ts";
import { Unfolding } from "../parts/Unfolding.tsx";

/** A drawing, what it says, what it assumes, and behind it the same in words and as a table. */
export function ChartFigure({
  heading,
  drawing,
  says,
  words,
  assumed = [],
  table,
  children,
}: {
  heading: string;
  drawing?: ComponentChildren;
  /** The point of the drawing in a sentence or two. */
  says?: ComponentChildren;
  /** All of the drawing, for who does not see it. */
  words: string;
  assumed?: readonly string[];
  table: () => ComponentChildren;
  /** Controls and legend, between heading and drawing. */
  children?: ComponentChildren;
}) {
  return (
    <figure class="chart">
      <figcaption class="chart-heading">{heading}</figcaption>
      {children}
      {drawing}
      {says && <p class="chart-says">{says}</p>}
      {assumed.length > 0 && (
        <p class="chart-assumed">
          <strong>{messages.assumed} </strong>
          {assumed.join(" ")}
        </p>
      )}
      <Unfolding summary={messages.showNumbers}>
        {() => (
          <>
            <p>{words}</p>
            {table()}
          </>
        )}
      </Unfolding>
    </figure>
  );
}

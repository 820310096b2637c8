import type { ComponentChildren } from "preact";
import * as messages from "../../../words/compiled/screens/answer/card.ts";
import { StateMark } from "../../drawings/StateMark.tsx";
import type { CardContent } from "./cardContent.ts";
import type { CardCode, CardPhoto } from "./cardPictures.ts";
import "./card.css";

/** The result for a customer or a parts counter, in one unit; on paper it is one page. */
export function CardPage({
  content,
  heading,
  travel,
  photos,
  code,
  link,
}: {
  content: CardContent;
  /** In place of the card's own heading. */
  heading?: ComponentChildren;
  /** The corner drawn to scale. */
  travel: ComponentChildren;
  photos: readonly CardPhoto[];
  /** Null where the check needs more than one. */
  code: CardCode | null;
  link: string | null;
}) {
  // One level below the page's own.
  const Part = heading === undefined ? "h3" : "h2";
  return (
    <article class="card-page" data-theme="light">
      {heading ?? <h2>{content.title}</h2>}
      <p class="small soft">{content.facts.join(" · ")}</p>
      <p class={`card-verdict tone-${content.verdict}`}>
        <StateMark state={content.verdict} size={36} label="" />
        {content.verdictWords}
      </p>
      <p>{content.reason}</p>
      {content.toDo !== "" && (
        <p>
          <strong>{messages.whatToDo({ toDo: content.toDo })}</strong>
        </p>
      )}
      <div class="card-pictures">
        {travel}
        {code && <CodeDrawing code={code} />}
      </div>
      <Part>{messages.readings}</Part>
      <ul class="card-readings">
        {content.readings.map(({ name, value }) => (
          <li key={name}>
            {name}: <strong>{value}</strong>
          </li>
        ))}
      </ul>
      {photos.length > 0 && (
        <div class="card-photos">
          {photos.map(({ address, words }, place) => (
            <img key={`${place} ${words}`} src={address} alt={words} />
          ))}
        </div>
      )}
      <Part>{messages.cautions}</Part>
      <ul class="plain-list small">
        {content.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {link && (
        <p class="small">
          <a href={link}>{messages.openThisCheckIn}</a>
        </p>
      )}
      <p class="small">{content.certification}</p>
    </article>
  );
}

function CodeDrawing({ code: { side, quiet, path } }: { code: CardCode }) {
  const whole = side + 2 * quiet;
  return (
    <svg
      viewBox={`${-quiet} ${-quiet} ${whole} ${whole}`}
      role="img"
      aria-label={messages.qrCodeOfThis}
    >
      <rect x={-quiet} y={-quiet} width={whole} height={whole} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}

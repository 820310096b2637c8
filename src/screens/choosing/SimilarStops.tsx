import { useMemo } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop } from "../../records/pack/pack.ts";
import { type SimilarStop, similarStops, similarText } from "../../records/pack/similarStops.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { stopTitle } from "../../records/pack/stopTitle.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/choosing.ts";
import { Button } from "../parts/Button.tsx";

/** The nearest stops that can be ordered, each with how far it is. */
export function SimilarStops({
  pack,
  wanted,
  unit,
  onChoose,
  hrefOf,
}: {
  pack: Pack;
  wanted: Parameters<typeof similarStops>[1];
  unit: LengthUnit;
  onChoose?: (stop: PackStop) => void;
  hrefOf?: (stop: PackStop) => string;
}) {
  const found = useMemo(() => similarStops(pack, wanted), [pack, wanted]);
  if (found.length === 0) return <p class="small">{messages.noStopOfThis}</p>;
  return (
    <ul class="plain-list similar-stops">
      {found.map((similar: SimilarStop) => {
        const { stop } = similar;
        return (
          <li key={stop.id} class="stack-close">
            <span>
              <strong>
                {hrefOf ? (
                  <a href={hrefOf(stop)}>{said(stopTitle(stop))}</a>
                ) : (
                  said(stopTitle(stop))
                )}
              </strong>
              {stop.partNumber && `, ${said(partText(stop))}`}
            </span>
            <span class="small">{sentenceText(similarText(similar), unit)}</span>
            {onChoose && (
              <span class="row">
                <Button label={messages.choose({ name: stop.name })} onClick={() => onChoose(stop)}>
                  {messages.chooseThisOne}
                </Button>
              </span>
            )}
          </li>
        );
      })}
    </ul>
  );
}

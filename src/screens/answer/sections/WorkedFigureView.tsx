import type { WorkedFigure } from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { said } from "../../../saying/texts.ts";
import { inLetters, inNumbers } from "../../../saying/workedStep.ts";
import * as messages from "../../../words/compiled/screens/answer/sections.ts";
import { howComputedName, type Passage, passageHref } from "../../howComputed/howComputedRoute.ts";
import { formulaQuantity, formulaSentence } from "../formulas/formulaText.ts";

/** A formula in letters, with this vehicle's numbers, what every letter is, and where it comes from. */
export function WorkedFigureView({
  heading,
  figure: { symbols, steps, source, assumed },
  passage,
  unit,
}: {
  heading: string;
  figure: WorkedFigure;
  /** Where the formula stands in its context. */
  passage: Passage;
  unit: LengthUnit;
}) {
  return (
    <div class="worked">
      <h3>{heading}</h3>
      <ol class="worked-steps">
        {steps.map((step, index) => (
          <li key={index}>
            <p class="formula">{inLetters(step)}</p>
            <p class="formula">= {formulaSentence(inNumbers(step), unit)}</p>
            <p class={index === steps.length - 1 ? "formula formula-result" : "formula"}>
              = {formulaQuantity(step.result, unit)}
            </p>
          </li>
        ))}
      </ol>
      {symbols.length > 0 && (
        <dl class="worked-symbols">
          {symbols.map(({ symbol, meaning, value, origin }) => (
            <div key={`${said(symbol)} ${said(meaning)}`}>
              <dt>{said(symbol)}</dt>
              <dd>
                {said(meaning)}: {formulaSentence(value, unit)}{" "}
                <span class="soft">({formulaSentence(origin, unit)})</span>
              </dd>
            </div>
          ))}
        </dl>
      )}
      {assumed.length > 0 && (
        <p class="small">
          <strong>{messages.assumed} </strong>
          {assumed.map(said).join(" ")}
        </p>
      )}
      <p class="small soft">
        <strong>{messages.source} </strong>
        {said(source)} <a href={passageHref(passage)}>{howComputedName}</a>
      </p>
    </div>
  );
}

import type { Fitment, Side } from "../../physics/fitment.ts";
import { type ReadingId, sideOf, withoutSide } from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import { mean, meanOf } from "../../physics/uncertainty/index.ts";
import { dateText } from "../../records/check/checkName.ts";
import type { CheckRecord, TypedReading } from "../../records/check/checkRecord.ts";
import { limitKindOf } from "../../records/entry/entryPath.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import { sourceOf, sourceText } from "../../records/entry/readingSource.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { type OddReading, quantityKindOf, readingsOf } from "../../records/review/oddReadings.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { readingWords } from "../answer/formulas/readingById.ts";
import { sideWords } from "../assessment/stateWords.ts";
import { StateMark } from "../drawings/StateMark.tsx";
import "./deskTable.css";
import "./readingsTable.css";

interface Line {
  readonly name: string;
  /** For the whole axle, or one for each side. */
  readonly cells: { readonly [Place in Side | "both"]?: { id: ReadingId; reading: TypedReading } };
}

function linesOf(record: CheckRecord, fitment: Fitment): Line[] {
  const lines = new Map<
    string,
    { name: string; cells: { [place: string]: Line["cells"]["both"] } }
  >();
  for (const { id, reading } of readingsOf(record)) {
    const side = sideOf(id);
    const words = readingWords(fitment, id);
    const name = side === null ? words : said(catalogueEntry(id, limitKindOf(record, id)).name);
    const key = side === null ? id : `${withoutSide(id)} ${name}`;
    const line = lines.get(key) ?? { name, cells: {} };
    line.cells[side ?? "both"] = { id, reading };
    lines.set(key, line);
  }
  return [...lines.values()] as Line[];
}

/** Scatter of the repeats: the standard deviation; nothing for one value. */
function scatterOf({ values }: TypedReading): number | null {
  if (values.length < 2) return null;
  const middle = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1));
}

/** Every reading, left and right beside each other, with its repeats and their scatter. */
export function ReadingsTable({
  record,
  fitment,
  odd,
  unit,
}: {
  record: CheckRecord;
  fitment: Fitment;
  odd: readonly OddReading[];
  unit: LengthUnit;
}) {
  const sides = record.corners.map(({ side }) => side);
  const secondOf = (id: ReadingId) => record.second?.readings[id];
  return (
    <>
      <p class="small soft">{takenText(record)}</p>
      <table class="desk-table desk-table-narrow">
        <caption class="unseen">{messages.readingsWithTheirRepeats}</caption>
        <thead>
          <tr>
            <th scope="col">{messages.reading}</th>
            {sides.map((side) => (
              <th key={side} scope="col">
                {sideWords[side]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {linesOf(record, fitment).map(({ name, cells }) => (
            <tr key={`${name} ${cells.both?.id ?? cells.left?.id ?? cells.right?.id}`}>
              <th scope="row">{capital(name)}</th>
              {cells.both ? (
                <td colSpan={sides.length}>
                  <ReadingCell
                    {...cells.both}
                    second={secondOf(cells.both.id)}
                    odd={odd}
                    unit={unit}
                  />
                </td>
              ) : (
                sides.map((side) => {
                  const cell = cells[side];
                  return (
                    <td key={side}>
                      {cell ? (
                        <ReadingCell {...cell} second={secondOf(cell.id)} odd={odd} unit={unit} />
                      ) : (
                        "–"
                      )}
                    </td>
                  );
                })
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** When, and by whom a second time. */
function takenText({ createdAt, second }: CheckRecord): string {
  const again =
    second === undefined
      ? ""
      : messages.secondPersonMeasuredWithout({ by: second.by, at: dateText(second.at) });
  return messages.begunOn({ createdAt: dateText(createdAt), again });
}

function ReadingCell({
  id,
  reading,
  second,
  odd,
  unit,
}: {
  id: ReadingId;
  reading: TypedReading;
  /** The same by a second person. */
  second: TypedReading | undefined;
  odd: readonly OddReading[];
  unit: LengthUnit;
}) {
  const kind = quantityKindOf(id);
  const text = (value: number) => quantityText({ kind, value }, unit);
  const scatter = scatterOf(reading);
  const shown = reading.values.slice(0, 8);
  const isOdd = odd.some((one) => one.reading === id);
  return (
    <span class={isOdd ? "desk-reading desk-reading-odd" : "desk-reading"}>
      <span>
        {isOdd && <StateMark state="unsure" size={18} label={messages.odd} />}
        <strong>{text(meanOf(reading))}</strong> ± {text(reading.tol)}
      </span>
      {(reading.values.length > 1 || reading.typed) && (
        <span class="small soft">
          {(reading.typed ?? shown.map(text)).slice(0, 8).join("; ")}
          {reading.values.length > shown.length &&
            messages.andMore({ values: reading.values.length - shown.length })}
          {scatter !== null && messages.scatter({ scatter: text(scatter) })}
        </span>
      )}
      {(reading.by !== undefined || sourceOf(reading) !== "measured") && (
        <span class="small soft">
          <bdi>{capital(said(sourceText(reading)))}</bdi>
        </span>
      )}
      {second && (
        <span class="small">
          <bdi>{second.by}</bdi>: {text(meanOf(second))} ± {text(second.tol)}
        </span>
      )}
      <Dots reading={reading} id={id} />
    </span>
  );
}

/** The repeats on a line as wide as three tolerances to each side. */
function Dots({ reading: { values, tol }, id }: { reading: TypedReading; id: ReadingId }) {
  if (values.length < 2 || tol <= 0) return null;
  const middle = mean(values);
  const place = (value: number) =>
    60 + 50 * Math.max(-1, Math.min(1, (value - middle) / (3 * tol)));
  const name = said(catalogueEntry(id).name);
  return (
    <svg
      class="desk-dots"
      viewBox="0 0 120 12"
      role="img"
      aria-label={messages.repeatsOfSpread({ name })}
    >
      <line x1="10" x2="110" y1="6" y2="6" />
      <line x1={60 - 50 / 3} x2={60 - 50 / 3} y1="1" y2="11" />
      <line x1={60 + 50 / 3} x2={60 + 50 / 3} y1="1" y2="11" />
      {values.slice(0, 40).map((value, index) => (
        <circle key={index} cx={place(value)} cy="6" r="3" />
      ))}
    </svg>
  );
}

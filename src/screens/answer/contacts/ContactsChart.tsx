import type { UseRules } from "../../../physics/fitment.ts";
import { screeningAssumptions, superscript } from "../../../physics/worked/index.ts";
import type { LengthUnit } from "../../../records/entry/units.ts";
import { speedText } from "../../assessment/eventWords.ts";
import { BottomAxis } from "../../charts/Axis.tsx";
import { ChartFigure } from "../../charts/ChartFigure.tsx";
import { useChartWidth } from "../../charts/chartWidth.ts";
import { DataTable } from "../../charts/DataTable.tsx";
import { Legend } from "../../charts/Legend.tsx";
import { logScale } from "../../charts/scale.ts";
import { decadeTicks } from "../../charts/ticks.ts";
import type { RoadContacts } from "./contactsByRoad.ts";
import { contactsText } from "./contactsWords.ts";

const least = 1e-6;
const rowHeight = 34;
const top = 26;

const roadWords = {
  A: "A, very good",
  B: "B, good",
  C: "C, average",
  D: "D, poor",
  E: "E, very poor",
} as const;

/** Contacts per km on each class of road, unladen and laden, on a log axis. */
export function ContactsChart({
  heading,
  contacts,
  rules,
  allowedPerKm,
  unit,
}: {
  heading: string;
  contacts: readonly RoadContacts[];
  rules: UseRules;
  /** Of this stop: a progressive one may be met more often. */
  allowedPerKm: number;
  unit: LengthUnit;
}) {
  const { holder, width } = useChartWidth(560);
  const here = contacts.find(({ roadClass }) => roadClass === rules.roadClass);
  const words = contacts
    .map(
      ({ roadClass, unladenPerKm, ladenPerKm }) =>
        `Road ${roadWords[roadClass]}: as measured ${orUnknown(unladenPerKm)}, loaded ${orUnknown(ladenPerKm)}.`,
    )
    .join(" ");
  return (
    <ChartFigure
      heading={heading}
      words={words}
      says={
        here &&
        `On the road of this use (${roadWords[rules.roadClass]}, ${speedText(rules.speedKmPerH, unit)}): ${orUnknown(here.unladenPerKm)} as measured, ${orUnknown(here.ladenPerKm)} loaded. Allowed: ${contactsText(allowedPerKm)} (common practice).`
      }
      assumed={screeningAssumptions}
      drawing={
        <div ref={holder}>
          <Drawing
            contacts={contacts}
            used={rules.roadClass}
            allowedPerKm={allowedPerKm}
            width={width}
            words={`${heading}. ${words}`}
          />
        </div>
      }
      table={() => (
        <DataTable
          caption={heading}
          columns={[{ name: "Road class" }, { name: "As measured" }, { name: "Loaded" }]}
          rows={contacts.map(({ roadClass, unladenPerKm, ladenPerKm }) => [
            roadWords[roadClass],
            orUnknown(unladenPerKm),
            orUnknown(ladenPerKm),
          ])}
        />
      )}
    >
      <Legend
        items={[
          { words: "as measured", sample: <circle class="dot-unladen" cx="14" cy="8" r="5.5" /> },
          {
            words: "loaded",
            sample: <rect class="dot-laden" x="9" y="3" width="10" height="10" />,
          },
          { words: "allowed", sample: <path class="line-allowed" d="M14 0V16" /> },
        ]}
      />
    </ChartFigure>
  );
}

function orUnknown(perKm: number | null): string {
  return perKm === null ? "not known" : contactsText(perKm);
}

function Drawing({
  contacts,
  used,
  allowedPerKm,
  width,
  words,
}: {
  contacts: readonly RoadContacts[];
  used: RoadContacts["roadClass"];
  allowedPerKm: number;
  width: number;
  words: string;
}) {
  const left = 30;
  const bottom = top + rowHeight * contacts.length;
  const height = bottom + 42;
  const rates = contacts.flatMap(({ unladenPerKm, ladenPerKm }) => [
    unladenPerKm ?? 0,
    ladenPerKm ?? 0,
  ]);
  const greatest = 10 ** Math.ceil(Math.log10(Math.max(100, allowedPerKm, ...rates)));
  const x = logScale([least, greatest], [left + 10, width - 14]);
  return (
    <svg
      role="img"
      aria-label={words}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <text class="axis-label" x={0} y={14}>
        road class
      </text>
      <BottomAxis
        scale={x}
        y={bottom}
        ticks={decadeTicks(least, greatest, width > 440 ? 10 : 6)}
        gridTop={top}
        format={perKmText}
        label="contacts per km"
      />
      {contacts.map(({ roadClass, unladenPerKm, ladenPerKm }, row) => {
        const y = top + rowHeight * (row + 0.5);
        const marked = roadClass === used;
        const [a, b] = [unladenPerKm ?? ladenPerKm, ladenPerKm ?? unladenPerKm];
        return (
          <g key={roadClass}>
            {marked && (
              <rect class="row-used" x={0} width={width} y={y - rowHeight / 2} height={rowHeight} />
            )}
            <text class={marked ? "row-name row-name-used" : "row-name"} x={8} y={y + 5}>
              {roadClass}
            </text>
            <line class="row-line" x1={left + 10} x2={width - 14} y1={y} y2={y} />
            {a !== null && b !== null && (
              <line class="row-join" x1={x.at(a)} x2={x.at(b)} y1={y} y2={y} />
            )}
            {ladenPerKm !== null && <Laden at={x.at(ladenPerKm)} y={y} off={ladenPerKm < least} />}
            {unladenPerKm !== null && (
              <Unladen at={x.at(unladenPerKm)} y={y} off={unladenPerKm < least} />
            )}
          </g>
        );
      })}
      <line
        class="line-allowed"
        x1={x.at(allowedPerKm)}
        x2={x.at(allowedPerKm)}
        y1={top - 6}
        y2={bottom}
      />
      <text class="axis-label" x={x.at(allowedPerKm) + 4} y={14} text-anchor="end">
        allowed
      </text>
    </svg>
  );
}

/** A mark past the left end of the axis points there. */
function Unladen({ at, y, off }: { at: number; y: number; off: boolean }) {
  return off ? (
    <path class="dot-unladen" d={`M${at + 6} ${y - 6}L${at - 5} ${y}L${at + 6} ${y + 6}Z`} />
  ) : (
    <circle class="dot-unladen" cx={at} cy={y} r="6" />
  );
}

function Laden({ at, y, off }: { at: number; y: number; off: boolean }) {
  return off ? (
    <path class="dot-laden" d={`M${at + 9} ${y - 9}L${at - 8} ${y}L${at + 9} ${y + 9}Z`} />
  ) : (
    <rect class="dot-laden" x={at - 6.5} y={y - 6.5} width="13" height="13" />
  );
}

function perKmText(value: number): string {
  const exponent = Math.round(Math.log10(value));
  return exponent >= -1 && exponent <= 3 ? String(value) : `10${superscript(exponent)}`;
}

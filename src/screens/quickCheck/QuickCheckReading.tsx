import type { ComponentChildren } from "preact";
import type { LimitPlace, ReadingId } from "../../physics/readings/index.ts";
import { mean } from "../../physics/uncertainty/index.ts";
import { type Entry, entryLengthUnit, readEntry } from "../../records/entry/entry.ts";
import { catalogueEntry, isBelievable } from "../../records/entry/readingCatalogue.ts";
import { type LengthUnit, mmPerInch } from "../../records/entry/units.ts";
import type { Platform } from "../../records/pack/pack.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/quickCheck.ts";
import { NumberField } from "../check/keypad/NumberField.tsx";
import { equivalentText } from "../check/reading/equivalent.ts";
import { WhatGoesWrong } from "../check/reading/WhatGoesWrong.tsx";
import { useSettled } from "../check/settled.ts";
import type { DrawingValues, PicturedReading } from "../drawings/drawnNumbers.ts";
import { ReadingDrawing } from "../drawings/ReadingDrawing.tsx";
import { Segmented } from "../parts/Choices.tsx";
import type { Tone } from "../parts/Notice.tsx";
import { readingWords } from "../readings/readingWords.ts";
import { spokenEntry } from "../voice/spokenEntry.ts";
import { type QuickCheckReadingName, quickCheckIds } from "./quickCheckDraft.ts";

/** What the drawings show before anything is typed: the vehicle as it usually stands. */
function valuesOf(
  platform: Platform,
  drawn: PicturedReading,
  typedMm: number | null,
): DrawingValues {
  const values: { [Name in PicturedReading]?: number } = {};
  for (const [name, reading] of Object.entries(platform.layout.readings)) {
    values[name as PicturedReading] = mean(reading.values);
  }
  if (platform.gap) values.gap = mean(platform.gap.values);
  if (platform.rideHeight) values.rideHeight = mean(platform.rideHeight.values);
  if (typedMm !== null) values[drawn] = typedMm;
  return values;
}

/** One of the customer's readings: how to take it, drawn, typed in mm or inches. */
export function QuickCheckReading({
  name,
  number,
  heading,
  platform,
  side,
  clearanceKind,
  clearanceAt = "wheel",
  entry: given,
  unit,
  usualMm,
  doubted = null,
  children,
  onEntry,
}: {
  name: QuickCheckReadingName;
  number: number;
  heading: string;
  platform: Platform;
  side: "left" | "right";
  clearanceKind: "tyre" | "damper";
  /** Measured where it touches, or as closing of the stop. */
  clearanceAt?: LimitPlace;
  entry: Entry | undefined;
  unit: LengthUnit;
  /** What the pack has in this place; null where it has nothing. */
  usualMm: number | null;
  /** Why it is not believed beside the others. */
  doubted?: string | null;
  children?: ComponentChildren;
  onEntry: (entry: Entry) => void;
}) {
  const id = quickCheckIds[name];
  const entry: Entry = given ?? { texts: [""], unit, tol: "" };
  const text = entry.texts[0] ?? "";
  const settled = useSettled(`${text}|${entry.unit}`);
  const reading = text.trim() === "" ? null : readEntry(id, entry);
  const typedMm = reading?.ok ? mean(reading.value.values) : null;
  const { layout } = platform;
  const kind = layout.kind;
  const drawn: PicturedReading =
    name === "clearance" ? `limit:${clearanceKind}` : name === "stopHeight" ? "freeHeight" : name;
  const guide = readingWords(
    id,
    layout,
    name === "clearance" ? { kind: clearanceKind, at: clearanceAt } : undefined,
  );
  const shownUnit = entryLengthUnit(entry);
  const own = settled ? remark(id, entry, reading, shownUnit) : null;
  const said =
    own ?? (settled && doubted !== null ? { tone: "unsure" as const, message: doubted } : null);
  return (
    <section class="card quick-check-reading" aria-labelledby={`quick-check-${name}`}>
      <h2 id={`quick-check-${name}`}>
        <span class="quick-check-number">{number}</span> {heading}
      </h2>
      {children}
      <p>{guide.how}</p>
      <div class="quick-check-columns">
        <ReadingDrawing
          layoutKind={kind}
          reading={drawn}
          values={valuesOf(platform, drawn, typedMm)}
          side={side}
          axle={platform.axle}
          {...(name === "clearance" && { at: clearanceAt })}
          unit={shownUnit}
        />
        <div class="stack-close">
          <NumberField
            label={heading}
            labelUnseen
            big
            value={text}
            fractions={shownUnit === "in"}
            said={spokenEntry(text, "length", entry.unit)}
            unit={entry.unit}
            unitSpoken={shownUnit === "in" ? messages.inches : messages.millimeters}
            onInput={(typed) => onEntry({ ...entry, texts: [typed] })}
            {...(said && { tone: said.tone, message: said.message })}
          />
          <Segmented
            legend={messages.unitOf({ reading: name === "clearance" ? clearanceKind : name })}
            legendUnseen
            value={shownUnit}
            onChange={(chosen) => onEntry({ ...entry, unit: chosen })}
            options={[
              { value: "mm", name: "mm" },
              { value: "in", name: messages.inches },
            ]}
          />
          {reading && (
            <p class="small soft reading-equivalent">{equivalentText("length", entry, reading)}</p>
          )}
          {usualMm !== null && (
            <p class="small soft">
              {messages.standardForThisVehicle({
                usualMm: quantityText({ kind: "length", value: usualMm }, shownUnit),
              })}
            </p>
          )}
        </div>
      </div>
      <div class="stack-close">
        <WhatGoesWrong
          wrong={guide.wrong}
          reading={drawn}
          kind={kind}
          at={name === "clearance" ? clearanceAt : undefined}
        />
      </div>
    </section>
  );
}

function remark(
  id: ReadingId,
  entry: Entry,
  reading: ReturnType<typeof readEntry> | null,
  unit: LengthUnit,
): { tone: Tone; message: string } | null {
  if (reading === null) return null;
  if (!reading.ok) return { tone: "no", message: sentenceText(reading.fault.sentence, unit) };
  const value = mean(reading.value.values);
  if (isBelievable(id, value)) return null;
  const [least, greatest] = catalogueEntry(id).believable;
  const text = (mm: number) => quantityText({ kind: "length", value: mm }, unit);
  const other = entry.unit === "in" ? value / mmPerInch : value * mmPerInch;
  const slip = isBelievable(id, other) ? messages.isItMillimeters({ unit: entry.unit }) : "";
  return {
    tone: "unsure",
    message: messages.typicalIsToPlease({ least: text(least), greatest: text(greatest), slip }),
  };
}

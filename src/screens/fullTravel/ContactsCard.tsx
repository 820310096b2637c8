import { useState } from "preact/hooks";
import type { Side } from "../../physics/fitment.ts";
import { type MetPart, touchedParts } from "../../physics/fullTravel/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { TypedReading } from "../../records/check/checkRecord.ts";
import {
  atRideEntryId,
  changeFullTravel,
  contactEntryId,
  type FullTravelRecord,
  withNote,
} from "../../records/check/fullTravel.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { withFullTravelSigned } from "../../records/filling/whoMeasured.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { ReadingEntry } from "../check/reading/ReadingEntry.tsx";
import type { Change } from "../guide/stepProps.ts";
import { Button } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { measurerNow, type Preferences } from "../preferences.ts";
import { BlockHeight } from "./BlockHeight.tsx";
import { partNames, unnamedParts } from "./fullTravelWords.ts";

interface Props {
  readonly side: Side;
  readonly found: FullTravelRecord;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
}

type Row = "atRide" | MetPart;

function valueText(reading: TypedReading | undefined, unit: LengthUnit): string {
  if (!reading) return messages.notWrittenDown;
  const text = (value: number) => quantityText({ kind: "length", value }, unit);
  return `${text(meanOf(reading))} ± ${text(reading.tol)}`;
}

/** What touched on one side, one contact open at a time. */
export function ContactsCard({ side, found, stored, change, preferences }: Props) {
  const [open, setOpen] = useState<Row | null>(null);
  const own = found.corners.find((corner) => corner.side === side);
  const heights = found.measure === "hubToArch";
  const parts: readonly MetPart[] = [
    "stop",
    "block",
    ...touchedParts.filter((part) => part !== "stop"),
  ];
  const rows: readonly Row[] = heights ? ["atRide", ...parts] : parts;
  const name = side === "left" ? messages.left : messages.right;
  // The record follows what is typed.
  const following: Change = (update) =>
    change((current) => {
      const typed = withFullTravelSigned(current, update(current), measurerNow());
      return changeFullTravel(typed, (record) => record);
    });
  return (
    <section class="card" aria-labelledby={`full-travel-${side}`}>
      <h2 id={`full-travel-${side}`}>{messages.whatTouchesWhere({ name })}</h2>
      <ul class="full-travel-rows">
        {rows.map((row) => {
          const part = row === "atRide" ? null : row;
          const reading = part ? own?.contacts[part]?.reading : own?.atRide;
          const note = part ? own?.contacts[part]?.note : undefined;
          const id = part ? contactEntryId(side, part, found.measure) : atRideEntryId(side);
          const words = part ? partNames[part] : messages.heightAtRide;
          return (
            <li key={row} data-contact={`${side}.${row}`}>
              <div class="full-travel-row">
                <span>
                  <strong>{words}</strong>
                  <span class="small soft full-travel-value">
                    {valueText(reading, preferences.length)}
                    {note && `, ${note}`}
                  </span>
                </span>
                <Button
                  look={open === row ? "quiet" : "plain"}
                  expanded={open === row}
                  label={`${open === row ? messages.closeWord : reading ? messages.change : messages.writeDown}: ${words}, ${side}`}
                  onClick={() => setOpen(open === row ? null : row)}
                >
                  {open === row
                    ? messages.closeWord
                    : reading
                      ? messages.change
                      : messages.writeDown}
                </Button>
              </div>
              {open === row && (
                <div class="stack-close full-travel-entry">
                  {part && part !== "block" && unnamedParts.includes(part) && (
                    <TextField
                      label={messages.whatTouchesWhat}
                      capitals
                      maxLength={120}
                      value={note ?? ""}
                      onInput={(text) =>
                        change((current) =>
                          changeFullTravel(current, (record) => withNote(record, side, part, text)),
                        )
                      }
                    />
                  )}
                  {part === "block" && (
                    <BlockHeight
                      side={side}
                      stored={stored}
                      change={following}
                      preferences={preferences}
                    />
                  )}
                  <p class="small">
                    {part === null
                      ? messages.fromHubsCenterStraight
                      : heights
                        ? messages.fromHubsCenterStraightUp
                        : messages.howFarWheelHas}
                  </p>
                  <ReadingEntry
                    id={id}
                    stored={stored}
                    change={following}
                    preferences={preferences}
                    onEnter={() => setOpen(null)}
                  />
                </div>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

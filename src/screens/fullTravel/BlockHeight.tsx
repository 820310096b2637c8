import type { Side } from "../../physics/fitment.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { blockHeightEntryId } from "../../records/check/fullTravel.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/fullTravel.ts";
import { ReadingEntry } from "../check/reading/ReadingEntry.tsx";
import { filled } from "../filled.ts";
import type { Change } from "../guide/stepProps.ts";
import type { Preferences } from "../preferences.ts";

/** How high a block stands for the fully compressed stop, mm; null while the stop is not known. */
function wantedHeight({ record: { stop } }: StoredCheck): number | null {
  if (stop?.freeHeight === undefined || stop.usableCompressionMm === undefined) return null;
  const height = meanOf(stop.freeHeight) - stop.usableCompressionMm;
  return height > 0 ? height : null;
}

/** How to make the block that stands for the fully compressed stop, and how high it came out. */
export function BlockHeight({
  side,
  stored,
  change,
  preferences,
}: {
  readonly side: Side;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
}) {
  const height = wantedHeight(stored);
  return (
    <>
      <p>
        {messages.rigidBlockInStops}
        {height !== null && (
          <>
            {" "}
            {filled(messages.makeItStopsHeight, {
              height: (
                <strong>
                  {messages.high({
                    height: quantityText({ kind: "length", value: height }, preferences.length),
                  })}
                </strong>
              ),
            })}
          </>
        )}
      </p>
      <ReadingEntry
        id={blockHeightEntryId(side)}
        stored={stored}
        change={change}
        preferences={preferences}
      />
    </>
  );
}

import type { Side } from "../../../physics/fitment.ts";
import type { PartialLimit } from "../../../records/check/checkRecord.ts";
import { changeRecord, type StoredCheck } from "../../../records/check/storedCheck.ts";
import { withCorner } from "../../../records/entry/entryPath.ts";
import { plainDecimal } from "../../../records/entry/units.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Segmented } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import type { Preferences } from "../../preferences.ts";
import { helperValue, NumberEntry } from "../NumberEntry.tsx";

interface Props {
  readonly id: string;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
}

function withAt(stored: StoredCheck, side: Side, index: number, at: PartialLimit["at"]) {
  return changeRecord(stored, (record) =>
    withCorner(record, side, (corner) => ({
      ...corner,
      limits: corner.limits.map((limit, place) => (place === index ? { ...limit, at } : limit)),
    })),
  );
}

/** Damper closing per wheel travel, from where its lower bolt sits on the arm. Null: not known yet. */
function closingFromLever(stored: StoredCheck, id: string): number | null {
  const mount = helperValue(stored, `${id}.helperMount`, "length");
  const outer = stored.record.layout?.readings?.pivotToOuter?.values[0];
  if (mount === null || outer === undefined) return null;
  const lean = helperValue(stored, `${id}.helperLean`, "angle", "any") ?? 0;
  const closing = (mount / outer) * Math.cos((lean * Math.PI) / 180);
  return closing > 0 && Number.isFinite(closing) ? closing : null;
}

/** Where a clearance was measured, and how fast it closes. Nothing on other readings. */
export function LimitOptions({ id, stored, change, preferences }: Props) {
  const match = /^(left|right)\.limits\.(\d+)$/.exec(id);
  if (!match) return null;
  const side = match[1] as Side;
  const index = Number(match[2]);
  const limit = stored.record.corners.find((corner) => corner.side === side)?.limits[index];
  if (!limit) return null;
  const found = closingFromLever(stored, id);
  const props = { stored, change, preferences };
  return (
    <div class="stack">
      <Segmented
        legend="Where was it measured?"
        value={limit.at}
        onChange={(at) => change((current) => withAt(current, side, index, at))}
        options={[
          { value: "wheel", name: "At the part itself" },
          { value: "stop", name: "At the stop" },
        ]}
      />
      {limit.at === "stop" ? (
        <Notice tone="info">
          <p>
            Type how far the stop's gap and the stop itself will have closed, counted from how the
            vehicle stands now, when this touches.
          </p>
        </Notice>
      ) : (
        <Disclosure
          summary={`Closes by ${limit.perWheel === undefined ? "1" : plainDecimal(Number(limit.perWheel.toPrecision(3)))} mm per mm of wheel travel`}
        >
          <p class="small">
            Straight over the wheel it is 1. Measured along a damper or spring that sits further in
            on the arm, or leans, it closes slower than the wheel rises: less than 1.
          </p>
          <NumberEntry
            {...props}
            id={`${id}.perWheel`}
            label="Closing per wheel travel"
            hint="Empty means 1."
            unitWords="mm per mm"
          />
          {(stored.record.layout?.kind === "arm" || stored.record.layout?.kind === "damper") && (
            <>
              <p class="field-label">Or find it from the arm</p>
              <NumberEntry
                {...props}
                id={`${id}.helperMount`}
                kind="length"
                label="Pivot to where it sits on the arm"
                unitChoice
              />
              <NumberEntry
                {...props}
                id={`${id}.helperLean`}
                kind="angle"
                label="Its lean from the vertical"
              />
              <Button
                disabled={found === null}
                onClick={() =>
                  found !== null &&
                  change((current) =>
                    setEntry(current, `${id}.perWheel`, {
                      texts: [found.toFixed(3)],
                      unit: "",
                      tol: "",
                    }),
                  )
                }
              >
                {found === null ? "Needs pivot to outer joint" : `Use ${found.toFixed(2)}`}
              </Button>
            </>
          )}
        </Disclosure>
      )}
    </div>
  );
}

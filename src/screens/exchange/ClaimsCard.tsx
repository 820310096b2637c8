import { useMemo } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { oddReadings } from "../../records/review/oddReadings.ts";
import { Card } from "../parts/Card.tsx";

/** More than a phone's screen holds are not read one by one. */
const shownAtMost = 8;

/** What a check that someone sent claims, and a person should see before going by it. */
export function ClaimsCard({
  record,
  pack,
  unit,
}: {
  record: CheckRecord;
  pack: Pack;
  unit: LengthUnit;
}) {
  const odd = useMemo(() => oddReadings(record, pack), [record, pack]);
  if (odd.length === 0) return null;
  return (
    <Card heading="Look at these first">
      <ul class="stack-close">
        {odd.slice(0, shownAtMost).map(({ reading, kind, sentence }, index) => (
          <li key={`${reading} ${kind} ${index}`} data-odd={kind}>
            <bdi>{sentenceText(sentence, unit)}</bdi>
          </li>
        ))}
        {odd.length > shownAtMost && <li>and {odd.length - shownAtMost} more</li>}
      </ul>
      {odd.some(({ kind }) => kind === "demand") && (
        <p class="small soft">
          Once you keep it, its answer goes by its own requirements until you change them.
        </p>
      )}
    </Card>
  );
}

import { useMemo } from "preact/hooks";
import type { CheckRecord } from "../../records/check/checkRecord.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack } from "../../records/pack/pack.ts";
import { packSince } from "../../records/pack/packSince.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { Notice } from "../parts/Notice.tsx";

/** What the check holds of a pack that the desk's pack has otherwise. */
export function PackSince({
  record,
  pack,
  unit,
}: {
  record: CheckRecord;
  pack: Pack;
  unit: LengthUnit;
}) {
  const since = useMemo(() => packSince(record, pack), [record, pack]);
  if (since.length === 0) return null;
  return (
    <Notice tone="care">
      {since.map((sentence) => {
        const text = sentenceText(sentence, unit);
        return <p key={text}>{text}</p>;
      })}
    </Notice>
  );
}

import type { LengthUnit } from "../../records/entry/units.ts";
import type { PackTest } from "../../records/pack/pack.ts";
import { remarkTexts } from "../../saying/remarkTexts.ts";

/** What was put right in a kept test's file, and what to know of it. */
export function KeptRemarks({ test, unit }: { test: PackTest; unit: LengthUnit }) {
  return (
    <ul class="plain-list">
      {remarkTexts(test, unit).map((remark) => (
        <li key={remark}>{remark}</li>
      ))}
    </ul>
  );
}

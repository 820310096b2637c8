import * as messages from "../../words/compiled/records/pack.ts";
import type { Platform } from "../check/checkRecord.ts";

/** "2019 to 2023", "from 2021", "2020". */
function yearsText({ from, to }: NonNullable<Platform["years"]>): string {
  if (to === undefined) return messages.from({ from });
  return to === from ? String(from) : messages.to({ from, to });
}

/** Years, trims and what to look for, where the pack says so; empty where it says nothing. */
export function platformTold({ years, trims, tellApart }: Platform): string {
  return [
    ...(years ? [yearsText(years)] : []),
    ...(trims && trims.length > 0 ? [trims.join(", ")] : []),
    ...(tellApart ? [tellApart] : []),
  ].join(" · ");
}

import { commaList, dotList, type Message, type Words } from "../../physics/sentence.ts";
import * as messages from "../../words/compiled/records/pack.ts";
import type { Platform } from "../check/checkRecord.ts";

/** "2019 to 2023", "from 2021", "2020". */
function yearsText({ from, to }: NonNullable<Platform["years"]>): Words {
  if (to === undefined) return messages.from({ from });
  return to === from ? String(from) : messages.to({ from, to });
}

/** Years, trims and what to look for, where the pack says so; empty where it says nothing. */
export function platformTold({ years, trims, tellApart }: Platform): Words {
  return dotList([
    ...(years ? [yearsText(years)] : []),
    ...(trims && trims.length > 0 ? [commaList(trims)] : []),
    ...(tellApart ? [tellApart] : []),
  ]);
}

/** "Marlow utility, front": which axle of which vehicle it is. */
export function platformTitle({ label, axle }: Pick<Platform, "label" | "axle">): Message {
  return messages.platformOnAxle({ label, axle });
}

import type { Reading } from "../../../physics/fitment.ts";
import type { Outcome } from "../../../physics/outcome.ts";
import { mean } from "../../../physics/uncertainty/index.ts";
import type { Entry } from "../../../records/entry/entry.ts";
import type { EntryKind } from "../../../records/entry/readingCatalogue.ts";
import { fromModel, mmPerInch } from "../../../records/entry/units.ts";
import { sixteenths } from "../../../saying/quantityText.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";

/**
 * The reading in the other unit, and the mean where it was taken more than once. Empty: nothing to say.
 *
 * @param brief without the nearest sixteenth, for who has made three checks
 */
export function equivalentText(
  kind: EntryKind,
  entry: Entry,
  reading: Outcome<Reading>,
  brief = false,
): string {
  if (!reading.ok) return "";
  const { values } = reading.value;
  const middle = mean(values);
  const before = values.length > 1 ? messages.meanOf({ values: values.length }) : "= ";
  switch (kind) {
    case "length": {
      const mm = `${middle.toFixed(1)} mm`;
      const about = brief ? "" : messages.about({ sixteenths: sixteenths(middle / mmPerInch) });
      const inches = `${(middle / mmPerInch).toFixed(2)} in${about}`;
      if (values.length > 1)
        return entry.unit === "in" ? `${before}${inches} = ${mm}` : `${before}${mm} = ${inches}`;
      return `${before}${entry.unit === "in" ? mm : inches}`;
    }
    case "mass": {
      const kg = `${middle.toFixed(0)} kg`;
      const lb = `${fromModel(middle, "lb").toFixed(0)} lb`;
      if (values.length > 1)
        return entry.unit === "lb" ? `${before}${lb} = ${kg}` : `${before}${kg} = ${lb}`;
      return `${before}${entry.unit === "lb" ? kg : lb}`;
    }
    case "angle":
      return values.length > 1 ? `${before}${middle.toFixed(1)}°` : "";
    default:
      return "";
  }
}

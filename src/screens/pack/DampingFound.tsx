import { fromModel, type LengthUnit } from "../../records/entry/units.ts";
import { quantityText, unbroken } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";

/** A value and its ±, N·s/mm; null where nothing was tested. */
type Found = readonly [value: number, off: number] | null;

export function dampingUnitOf(unit: LengthUnit): "lbf·s/in" | "N·s/mm" {
  return unit === "in" ? "lbf·s/in" : "N·s/mm";
}

export function dampingText(found: Found, unit: LengthUnit): string {
  if (found === null) return messages.notTested;
  const [value, off] = found.map((each) => fromModel(each, dampingUnitOf(unit)));
  return `${value?.toPrecision(3)} ± ${off?.toPrecision(2)}`;
}

/** The dashpot that a test found, depth by depth. */
export function DampingFound({
  caption,
  rows,
  unit,
}: {
  caption: string;
  rows: readonly {
    readonly depthMm: number;
    readonly compressing: Found;
    readonly rebounding: Found;
  }[];
  unit: LengthUnit;
}) {
  return (
    <table class="pack-differs">
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{messages.depth}</th>
          <th scope="col">
            {messages.pressedDeeper({ dampingUnitOf: unbroken(dampingUnitOf(unit)) })}
          </th>
          <th scope="col">
            {messages.comingBack({ dampingUnitOf: unbroken(dampingUnitOf(unit)) })}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ depthMm, compressing, rebounding }) => (
          <tr key={depthMm}>
            <th scope="row">{quantityText({ kind: "length", value: depthMm }, unit)}</th>
            <td>{dampingText(compressing, unit)}</td>
            <td>{dampingText(rebounding, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

import { useEffect, useState } from "preact/hooks";
import type { ImportOptions, TestQuantity, TestUnit } from "../../records/testRows/testFile.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { Button } from "../parts/Button.tsx";
import { SelectField } from "../parts/Field.tsx";

export type ChosenColumns = NonNullable<ImportOptions["columns"]>;

interface Use {
  readonly quantity: TestQuantity;
  readonly unit: TestUnit;
}

const units: { readonly [Quantity in TestQuantity]: readonly TestUnit[] } = {
  depth: ["mm", "in", "cm", "m"],
  speed: ["mm/s", "m/s", "cm/s", "in/s", "mm/min"],
  force: ["N", "kN", "daN", "lbf", "kgf", "kip"],
  time: ["s", "ms", "min"],
};

const quantityWords: { readonly [Quantity in TestQuantity]: string } = {
  depth: messages.depthOrDisplacement,
  speed: messages.speed,
  force: messages.force,
  time: messages.time,
};

const options = [
  { value: "", text: messages.notUsed },
  ...(Object.keys(units) as TestQuantity[]).flatMap((quantity) =>
    units[quantity].map((unit) => ({
      value: `${quantity} ${unit}`,
      text: `${quantityWords[quantity]}, ${unit}`,
    })),
  ),
];

/** Where the headings don't say what the columns are, the person does. */
export function ColumnChoice({
  file,
  onColumns,
}: {
  file: File;
  onColumns: (columns: ChosenColumns) => void;
}) {
  const [lines, setLines] = useState<readonly (readonly string[])[]>([]);
  const [chosen, setChosen] = useState<{ readonly [index: number]: Use }>({});
  useEffect(() => {
    let left = false;
    import("../../records/testRows/fileGlance.ts")
      .then(({ fileGlance }) => fileGlance(file))
      .then((rows) => {
        if (!left) setLines(rows);
      })
      .catch(() => undefined);
    return () => {
      left = true;
    };
  }, [file]);
  const width = Math.max(0, ...lines.map((cells) => cells.length));
  const columns = Object.entries(chosen).map(([index, use]) => ({ index: Number(index), ...use }));
  const has = (quantity: TestQuantity) =>
    columns.filter((column) => column.quantity === quantity).length === 1;
  const enough = has("depth") && has("force") && (has("speed") || has("time"));
  return (
    <section class="card" aria-labelledby="columns-heading">
      <h2 id="columns-heading">{messages.sayWhatColumnsAre}</h2>
      {Array.from({ length: width }, (_, index) => {
        const samples = lines.map((cells) => cells[index] ?? "").filter((cell) => cell !== "");
        const use = chosen[index];
        return (
          <SelectField
            key={index}
            label={messages.column({ index: index + 1 })}
            hint={samples.join(" · ")}
            value={use ? `${use.quantity} ${use.unit}` : ""}
            options={options}
            onChange={(value) => {
              const [quantity, unit] = value.split(" ");
              setChosen((before) => {
                const { [index]: _, ...others } = before;
                return quantity && unit
                  ? {
                      ...others,
                      [index]: { quantity: quantity as TestQuantity, unit: unit as TestUnit },
                    }
                  : others;
              });
            }}
          />
        );
      })}
      <p class="small soft">{messages.neededDepthAndForce}</p>
      <Button look="main" disabled={!enough} onClick={() => onColumns(columns)}>
        {messages.readItSo}
      </Button>
    </section>
  );
}

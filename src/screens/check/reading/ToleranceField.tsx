import type { Entry } from "../../../records/entry.ts";
import { catalogueEntry } from "../../../records/readingCatalogue.ts";
import { Choices } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { TextField } from "../../parts/Field.tsx";
import { toleranceChoices, toleranceText, toleranceValue } from "./tolerances.ts";

/** How well the tool measures: chosen by tool, or typed. */
export function ToleranceField({
  id,
  entry,
  onTol,
}: {
  id: string;
  entry: Entry;
  onTol: (tol: string) => void;
}) {
  const { kind, defaultTolerance } = catalogueEntry(id);
  const value = toleranceValue(entry.tol, kind, entry.unit, defaultTolerance);
  const choices = toleranceChoices(kind, entry.unit);
  const picked = choices.find(
    ({ tol }) =>
      value !== null && Math.abs((toleranceValue(tol, kind, entry.unit, 0) ?? -1) - value) < 1e-9,
  );
  return (
    <Disclosure
      summary={`How exact: ${toleranceText(entry.tol, kind, entry.unit, defaultTolerance)}`}
    >
      <Choices
        legend="What do you measure with?"
        value={picked?.tol ?? null}
        onChange={onTol}
        options={choices.map(({ tol, tool }) => ({
          value: tol,
          name: tool,
          hint: toleranceText(tol, kind, entry.unit, defaultTolerance),
        }))}
      />
      <TextField
        label="Or your own ±"
        hint="How far the reading may be off, either way. It widens the band of the answer."
        value={entry.tol}
        onInput={onTol}
        keys={entry.unit === "in" ? "text" : "decimal"}
        unit={/[a-z°"]/i.test(entry.tol) ? "" : kind === "angle" ? "°" : entry.unit}
        placeholder={toleranceText("", kind, entry.unit, defaultTolerance).replace("± ", "")}
        {...(value === null && {
          tone: "no" as const,
          message: "This ± can't be read. Type a number such as 1 or 1/16.",
        })}
      />
    </Disclosure>
  );
}

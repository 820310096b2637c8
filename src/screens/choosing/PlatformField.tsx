import { useState } from "preact/hooks";
import type { Platform } from "../../records/pack/pack.ts";
import { platformTold } from "../../records/pack/platformTold.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/choosing.ts";
import { filled } from "../filled.ts";
import { SelectField, TextField } from "../parts/Field.tsx";
import { useFound } from "./search.ts";

/** A longer list is searched. */
const mostWithoutSearch = 20;

function nameOf(platform: Platform): string {
  const { label, axle, years, trims } = platform;
  const told = said(
    platformTold({
      ...(years && { years }),
      ...(trims && { trims }),
    } as Platform),
  );
  return [messages.axle({ label, axle }), ...(told === "" ? [] : [told])].join(" · ");
}

/** A vehicle of the parts library by name, years and trim; what tells it apart stands below it. */
export function PlatformField({
  label,
  hint,
  none,
  platforms,
  value,
  onChange,
}: {
  label: string;
  hint?: string;
  /** What it says where none is chosen. */
  none: string;
  platforms: readonly Platform[];
  value: string | null;
  onChange: (platform: Platform | null) => void;
}) {
  const [wanted, setWanted] = useState("");
  const searched = platforms.length > mostWithoutSearch;
  const matching = useFound(
    platforms,
    (platform) => `${nameOf(platform)} ${platform.tellApart ?? ""}`,
    wanted,
  );
  const chosen = platforms.find(({ id }) => id === value);
  const found = chosen && !matching.includes(chosen) ? [chosen, ...matching] : matching;
  return (
    <>
      {searched && (
        <TextField
          label={messages.searchVehicles}
          hint={messages.nameYearTrim}
          value={wanted}
          onInput={setWanted}
        />
      )}
      <SelectField
        label={
          searched
            ? messages.ofWord({ label, found: found.length, platforms: platforms.length })
            : label
        }
        hint={hint}
        value={value ?? ""}
        options={[
          { value: "", text: none },
          ...found.map((platform) => ({ value: platform.id, text: nameOf(platform) })),
        ]}
        onChange={(id) => onChange(platforms.find((each) => each.id === id) ?? null)}
      />
      {chosen?.tellApart && (
        <p class="small">
          {filled(messages.howToTellIt, { tellApart: <strong>{chosen.tellApart}</strong> })}
        </p>
      )}
    </>
  );
}

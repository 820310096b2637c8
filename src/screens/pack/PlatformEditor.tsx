import type { LayoutKind, LimitKind } from "../../physics/fitment.ts";
import {
  type GeometryReadingName,
  layoutKinds,
  layoutRegistry,
  limitPlaces,
  neededReadings,
} from "../../physics/readings/index.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, Platform } from "../../records/pack/pack.ts";
import { LayoutPicture } from "../drawings/LayoutPicture.tsx";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { Button } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { SelectField } from "../parts/Field.tsx";
import { limitTitles } from "../readings/limitWords.ts";
import { PackNumber, PackReading, PackText } from "./fields.tsx";
import { ItemScreen, NoSuchItem } from "./ItemScreen.tsx";
import { type ItemDraft, setText, textOf } from "./itemDraft.ts";
import { MountFields } from "./MountFields.tsx";
import { freeId, withPlatform } from "./packEdits.ts";
import { newItem } from "./packRoutes.ts";
import {
  cornerReadings,
  fieldLabel,
  layoutNames,
  limitCount,
  platformDraft,
  platformOfDraft,
  rideNames,
  withAnotherLimit,
  withoutLimit,
} from "./platformDraft.ts";
import { useItemDraft } from "./useItemDraft.ts";

/** One axle of a vehicle in the pack, every field of it. */
export function PlatformEditor({ pack, id, unit }: { pack: Pack; id: string; unit: LengthUnit }) {
  const base = id === newItem ? null : (pack.platforms.find((each) => each.id === id) ?? null);
  if (base === null && id !== newItem) return <NoSuchItem what="vehicle" />;
  return <Editing key={id} pack={pack} id={id} base={base} unit={unit} />;
}

function Editing({
  pack,
  id,
  base,
  unit,
}: {
  pack: Pack;
  id: string;
  base: Platform | null;
  unit: LengthUnit;
}) {
  const editing = useItemDraft(`platform.${id}`, JSON.stringify(base), () =>
    platformDraft(base, unit),
  );
  const { draft, change } = editing;
  const fields = { draft, change };
  const put = (field: string) => (text: string) =>
    change((current) => setText(current, field, text));
  const kind = (draft.texts.layout ?? "arm") as LayoutKind;
  const readingField = (name: GeometryReadingName) => {
    const { kind: quantity, allowed } = catalogueEntry(name);
    return (
      <PackReading
        key={name}
        {...fields}
        field={name}
        label={fieldLabel(name)}
        optional={!neededReadings[kind].includes(name)}
        kind={quantity}
        allowed={allowed}
      />
    );
  };
  const keep = () => {
    const own =
      base === null
        ? freeId(
            `${textOf(draft, "label")} ${textOf(draft, "axle")}`,
            pack.platforms.map((each) => each.id),
          )
        : id;
    const { platform, faults } = platformOfDraft(draft, base, own);
    if (platform === null) return editing.refuse(faults);
    return editing.keep(
      withPlatform(pack, platform),
      base === null ? `Added: ${platform.label}` : `Changed: ${platform.label}`,
    );
  };
  return (
    <ItemScreen
      heading={base ? `${base.label}, ${base.axle} axle` : "New vehicle"}
      editing={editing}
      onKeep={keep}
    >
      <section class="card">
        <PackText {...fields} field="label" label="Vehicle" />
        <Segmented
          legend="Axle"
          value={textOf(draft, "axle") === "rear" ? "rear" : "front"}
          onChange={put("axle")}
          options={[
            { value: "front", name: "Front" },
            { value: "rear", name: "Rear" },
          ]}
        />
        <SelectField
          label="Usual stop"
          value={textOf(draft, "usualStop")}
          options={[
            { value: "", text: "None given" },
            ...pack.stops.map((stop) => ({ value: stop.id, text: stop.name })),
          ]}
          onChange={put("usualStop")}
        />
        <div class="pack-two">
          <PackNumber {...fields} field="years.from" label="First year" kind="number" />
          <PackNumber {...fields} field="years.to" label="Last year" kind="number" />
        </div>
        <PackText {...fields} field="trims" label="Trims" hint="Apart by semicolons." />
        <PackText
          {...fields}
          field="tellApart"
          label="How to tell it apart"
          hint="What to look for on the vehicle."
        />
        <PackText {...fields} field="notes" label="Notes" maxLength={20_000} />
      </section>
      <MountFields {...fields} of="platform" />
      <section class="card" aria-labelledby="layout-heading">
        <h2 id="layout-heading">Layout</h2>
        <SelectField
          label="Where the stop sits"
          value={kind}
          options={layoutKinds.map((value) => ({
            value,
            text: layoutsOnScreen[value].words.short,
          }))}
          onChange={put("layout")}
        />
        <LayoutPicture kind={kind} />
        <LayoutSaid kind={kind} draft={draft} put={put} />
        {layoutNames(kind).map(readingField)}
        {layoutNames(kind, "parts").length > 0 && (
          <Disclosure summary="Made of bolt distances and heights">
            <p class="small soft">
              In place of the lengths and angles above, where the tape or the floor gave these.
            </p>
            {layoutNames(kind, "parts").map(readingField)}
          </Disclosure>
        )}
        <PackNumber
          {...fields}
          field="wheelPerOuter"
          label={fieldLabel("wheelPerOuter")}
          kind="number"
          placeholder="usual"
        />
        <PackNumber
          {...fields}
          field="wheelPerOuterTol"
          label={fieldLabel("wheelPerOuterTol")}
          kind="number"
          allowed="zeroOrMore"
          placeholder="0"
        />
      </section>
      <section class="card" aria-labelledby="stands-heading">
        <h2 id="stands-heading">As it usually stands</h2>
        {cornerReadings.map((name) => (
          <PackReading
            key={name}
            {...fields}
            field={name}
            label={name === "gap" ? "Gap, with its usual stop" : fieldLabel(name)}
            optional
            kind={catalogueEntry(name).kind}
          />
        ))}
        {rideNames.map((name) => {
          const { kind: quantity, allowed } = catalogueEntry(name);
          return (
            <PackReading
              key={name}
              {...fields}
              field={`ride.${name}`}
              label={fieldLabel(name)}
              optional
              kind={quantity}
              allowed={allowed}
            />
          );
        })}
      </section>
      <section class="card" aria-labelledby="limits-heading">
        <h2 id="limits-heading">Usual clearances</h2>
        {Array.from({ length: limitCount(draft) }, (_, index) => (
          <fieldset key={index} class="pack-limit">
            <legend class="field-label">Clearance {index + 1}</legend>
            <SelectField
              label="What ends the travel"
              value={textOf(draft, `limits.${index}.kind`)}
              options={(Object.keys(limitTitles) as LimitKind[]).map((value) => ({
                value,
                text: limitTitles[value],
              }))}
              onChange={put(`limits.${index}.kind`)}
            />
            <Segmented
              legend="Measured"
              value={
                limitPlaces.find((at) => at === textOf(draft, `limits.${index}.at`)) ?? "wheel"
              }
              onChange={put(`limits.${index}.at`)}
              options={[
                { value: "wheel", name: "Where it touches" },
                { value: "stop", name: "At the stop" },
                ...(layoutRegistry[kind].onArm
                  ? [{ value: "arm" as const, name: "On the arm" }]
                  : []),
              ]}
            />
            <PackReading
              {...fields}
              field={`limits.${index}`}
              label={`Clearance of limit ${index + 1}`}
              kind="length"
            />
            {textOf(draft, `limits.${index}.at`) === "arm" && (
              <PackReading
                {...fields}
                field={`limits.${index}.distance`}
                label={`Limit ${index + 1} from the pivot line`}
                kind="length"
              />
            )}
            {!["stop", "arm"].includes(textOf(draft, `limits.${index}.at`)) && (
              <PackNumber
                {...fields}
                field={`limits.${index}.perWheel`}
                label={`Closing per wheel travel of limit ${index + 1}`}
                kind="number"
                unitWords="mm per mm"
                placeholder="1"
              />
            )}
            <Button
              icon="bin"
              look="danger"
              onClick={() => change((current) => withoutLimit(current, index))}
            >
              Take out clearance {index + 1}
            </Button>
          </fieldset>
        ))}
        <Button icon="plus" onClick={() => change(withAnotherLimit)}>
          Another clearance
        </Button>
      </section>
    </ItemScreen>
  );
}

/** Which arm was measured, and what is flat and turns. */
function LayoutSaid({
  kind,
  draft,
  put,
}: {
  kind: LayoutKind;
  draft: ItemDraft;
  put: (field: string) => (text: string) => void;
}) {
  const { onArm, saysStopOn } = layoutRegistry[kind];
  if (!onArm) return null;
  return (
    <>
      <SelectField
        label="Which arm was measured"
        value={textOf(draft, "armRole")}
        options={[
          { value: "", text: "Not said" },
          { value: "lower", text: "The lower of two" },
          { value: "upper", text: "The upper of two" },
          { value: "underStrut", text: "The arm under a strut" },
          { value: "carriesWheel", text: "The wheel is fixed to it" },
        ]}
        onChange={put("armRole")}
      />
      {saysStopOn && (
        <SelectField
          label="What the stop is fixed to"
          value={textOf(draft, "stopOn")}
          options={[
            { value: "", text: "Not said, a round contact" },
            { value: "frame", text: "The frame, its pad turns with the arm" },
            { value: "arm", text: "The arm, its pad is on the frame" },
          ]}
          onChange={put("stopOn")}
        />
      )}
    </>
  );
}

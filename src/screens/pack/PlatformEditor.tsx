import type { LayoutKind, LimitKind } from "../../physics/fitment.ts";
import {
  type GeometryReadingName,
  layoutKinds,
  layoutRegistry,
  limitPlaces,
  neededReadings,
  rideQuantities,
} from "../../physics/readings/index.ts";
import { platformReadings } from "../../records/check/recordFormat.ts";
import { catalogueEntry } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, Platform } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
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
  fieldLabel,
  fieldName,
  layoutNames,
  limitCount,
  platformDraft,
  platformOfDraft,
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
        name={fieldName(name)}
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
      base === null
        ? messages.added2({ label: platform.label })
        : messages.changed({ label: platform.label }),
    );
  };
  return (
    <ItemScreen
      heading={base ? messages.axle({ label: base.label, axle: base.axle }) : messages.newVehicle}
      editing={editing}
      onKeep={keep}
    >
      <section class="card">
        <PackText {...fields} field="label" label={messages.vehicle} />
        <Segmented
          legend={messages.axle2}
          value={textOf(draft, "axle") === "rear" ? "rear" : "front"}
          onChange={put("axle")}
          options={[
            { value: "front", name: messages.front },
            { value: "rear", name: messages.rear },
          ]}
        />
        <SelectField
          label={messages.usualStop2}
          value={textOf(draft, "usualStop")}
          options={[
            { value: "", text: messages.noneGiven },
            ...pack.stops.map((stop) => ({ value: stop.id, text: stop.name })),
          ]}
          onChange={put("usualStop")}
        />
        <div class="pack-two">
          <PackNumber {...fields} field="years.from" label={messages.firstYear} kind="number" />
          <PackNumber {...fields} field="years.to" label={messages.lastYear} kind="number" />
        </div>
        <PackText
          {...fields}
          field="trims"
          label={messages.trims}
          hint={messages.apartBySemicolons}
        />
        <PackText
          {...fields}
          field="tellApart"
          label={messages.howToTellIt}
          hint={messages.whatToLookFor}
        />
        <PackText {...fields} field="notes" label={messages.notes} maxLength={20_000} />
      </section>
      <MountFields {...fields} of="platform" />
      <section class="card" aria-labelledby="layout-heading">
        <h2 id="layout-heading">{messages.layout}</h2>
        <SelectField
          label={messages.whereStopSits}
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
          <Disclosure summary={messages.madeOfBoltDistances}>
            <p class="small soft">{messages.inPlaceOfLengths}</p>
            {layoutNames(kind, "parts").map(readingField)}
          </Disclosure>
        )}
        <PackNumber
          {...fields}
          field="wheelPerOuter"
          label={fieldLabel("wheelPerOuter")}
          kind="number"
          placeholder={messages.usual}
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
        <h2 id="stands-heading">{messages.asItUsuallyStands}</h2>
        {platformReadings.map((name) => (
          <PackReading
            key={name}
            {...fields}
            field={name}
            name={
              name === "gap"
                ? { label: messages.gapWithItsUsual, within: messages.gapWithItsUsualWithin }
                : fieldName(name)
            }
            optional
            kind={catalogueEntry(name).kind}
          />
        ))}
        {rideQuantities.map((name) => {
          const { kind: quantity, allowed } = catalogueEntry(name);
          return (
            <PackReading
              key={name}
              {...fields}
              field={`ride.${name}`}
              name={fieldName(name)}
              optional
              kind={quantity}
              allowed={allowed}
            />
          );
        })}
      </section>
      <section class="card" aria-labelledby="limits-heading">
        <h2 id="limits-heading">{messages.usualClearances}</h2>
        {Array.from({ length: limitCount(draft) }, (_, index) => (
          <fieldset key={index} class="pack-limit">
            <legend class="field-label">{messages.clearance2({ index: index + 1 })}</legend>
            <SelectField
              label={messages.whatEndsTravel}
              value={textOf(draft, `limits.${index}.kind`)}
              options={(Object.keys(limitTitles) as LimitKind[]).map((value) => ({
                value,
                text: limitTitles[value],
              }))}
              onChange={put(`limits.${index}.kind`)}
            />
            <Segmented
              legend={messages.measured}
              value={
                limitPlaces.find((at) => at === textOf(draft, `limits.${index}.at`)) ?? "wheel"
              }
              onChange={put(`limits.${index}.at`)}
              options={[
                { value: "wheel", name: messages.whereItTouches },
                { value: "stop", name: messages.atStop },
                ...(layoutRegistry[kind].onArm
                  ? [{ value: "arm" as const, name: messages.onArm }]
                  : []),
              ]}
            />
            <PackReading
              {...fields}
              field={`limits.${index}`}
              name={{
                label: messages.clearanceOfLimit({ index: index + 1 }),
                within: messages.clearanceOfLimitWithin({ index: index + 1 }),
              }}
              kind="length"
            />
            {textOf(draft, `limits.${index}.at`) === "arm" && (
              <PackReading
                {...fields}
                field={`limits.${index}.distance`}
                name={{
                  label: messages.limitFromPivotLine({ index: index + 1 }),
                  within: messages.limitFromPivotLineWithin({ index: index + 1 }),
                }}
                kind="length"
              />
            )}
            {!["stop", "arm"].includes(textOf(draft, `limits.${index}.at`)) && (
              <PackNumber
                {...fields}
                field={`limits.${index}.perWheel`}
                label={messages.closingPerWheelTravel({ index: index + 1 })}
                kind="number"
                unitWords={messages.mmPerMm}
                placeholder="1"
              />
            )}
            <Button
              icon="bin"
              look="danger"
              onClick={() => change((current) => withoutLimit(current, index))}
            >
              {messages.takeOutClearance({ index: index + 1 })}
            </Button>
          </fieldset>
        ))}
        <Button icon="plus" onClick={() => change(withAnotherLimit)}>
          {messages.anotherClearance}
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
        label={messages.whichArmWasMeasured}
        value={textOf(draft, "armRole")}
        options={[
          { value: "", text: messages.notSaid },
          { value: "lower", text: messages.lowerOfTwo },
          { value: "upper", text: messages.upperOfTwo },
          { value: "underStrut", text: messages.armUnderStrut },
          { value: "carriesWheel", text: messages.wheelIsFixedTo },
        ]}
        onChange={put("armRole")}
      />
      {saysStopOn && (
        <SelectField
          label={messages.whatStopIsFixed}
          value={textOf(draft, "stopOn")}
          options={[
            { value: "", text: messages.notSaidRoundContact },
            { value: "frame", text: messages.frameItsPadTurns },
            { value: "arm", text: messages.armItsPadIs },
          ]}
          onChange={put("stopOn")}
        />
      )}
    </>
  );
}

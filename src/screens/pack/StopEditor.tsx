import { useMemo } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop } from "../../records/pack/pack.ts";
import { CurveChart } from "../check/stop/CurveChart.tsx";
import { ButtonLink } from "../parts/Button.tsx";
import { Segmented } from "../parts/Choices.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { Notice } from "../parts/Notice.tsx";
import { BlockEstimate } from "./BlockEstimate.tsx";
import { PackNumber, PackReading, PackTable, PackText } from "./fields.tsx";
import { ItemScreen, NoSuchItem } from "./ItemScreen.tsx";
import { setText, textOf } from "./itemDraft.ts";
import { MountFields } from "./MountFields.tsx";
import { PartFields } from "./PartFields.tsx";
import { freeId, withStop } from "./packEdits.ts";
import { newItem, packItemHref } from "./packRoutes.ts";
import { StopTests } from "./StopTests.tsx";
import { curveKinds, dampingKinds, stopDraft, stopOfDraft } from "./stopDraft.ts";
import { useItemDraft } from "./useItemDraft.ts";

/** One stop of the pack, every field of it. */
const curveColumns = [
  { name: "Depth", metric: "mm", inches: "in" },
  { name: "Force", metric: "N", inches: "lbf" },
] as const;

const dampingColumns = [
  { name: "Depth", metric: "mm", inches: "in" },
  { name: "In", metric: "N·s/mm", inches: "lbf·s/in" },
  { name: "Out", metric: "N·s/mm", inches: "lbf·s/in" },
] as const;

export function StopEditor({ pack, id, unit }: { pack: Pack; id: string; unit: LengthUnit }) {
  const base = id === newItem ? null : (pack.stops.find((stop) => stop.id === id) ?? null);
  if (base === null && id !== newItem) return <NoSuchItem what="stop" />;
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
  base: PackStop | null;
  unit: LengthUnit;
}) {
  const editing = useItemDraft(`stop.${id}`, JSON.stringify(base), () => stopDraft(base, unit));
  const { draft, change } = editing;
  const fields = { draft, change };
  const trial = useMemo(() => stopOfDraft(draft, base, id), [draft, base, id]);
  const keep = () => {
    const { stop, faults } = trial;
    if (stop === null) return editing.refuse(faults);
    const own =
      base === null
        ? {
            ...stop,
            id: freeId(
              stop.name,
              pack.stops.map((each) => each.id),
            ),
          }
        : stop;
    return editing.keep(
      withStop(pack, own),
      base === null ? `Added: ${own.name}` : `Changed: ${own.name}`,
    );
  };
  const estimated = textOf(draft, "estimatedHow") !== "";
  return (
    <ItemScreen heading={base?.name ?? "New stop"} editing={editing} onKeep={keep}>
      {estimated && (
        <Notice tone="care">
          <p>
            <strong>Estimate.</strong> The force curve of this stop was not tested:{" "}
            {textOf(draft, "estimatedHow")}. Its forces may be off by{" "}
            {textOf(draft, "estimatedShare")} % either way, and every answer says so.
          </p>
        </Notice>
      )}
      <section class="card">
        <PackText {...fields} field="name" label="Name" />
        <Segmented
          legend="Purpose"
          value={textOf(draft, "duty") === "carry" ? "carry" : "impact"}
          onChange={(duty) => change((current) => setText(current, "duty", duty))}
          options={[
            { value: "impact", name: "Takes impacts" },
            { value: "carry", name: "Helps carry load" },
          ]}
        />
        <PackReading {...fields} field="freeHeight" label="Free height" kind="length" />
        <PackNumber
          {...fields}
          field="usableCompressionMm"
          label="Usable compression"
          hint="How far it may be pressed before it is fully compressed."
          kind="length"
        />
        <PackNumber {...fields} field="outerDiameterMm" label="Outer diameter" kind="length" />
        <PackText {...fields} field="material" label="Material" />
        <PackText {...fields} field="notes" label="Notes" maxLength={20_000} />
      </section>
      <PartFields {...fields} pack={pack} base={base} unit={unit} />
      <MountFields {...fields} of="stop" />
      <section class="card" aria-labelledby="curve-heading">
        <h2 id="curve-heading">Force curve{estimated ? ", an estimate" : ""}</h2>
        <p class="small soft">
          Pressed slowly, every row deeper and harder than the one before. A table can be pasted
          into the first cell.
        </p>
        {trial.stop && <CurveChart stop={trial.stop} unit={unit} />}
        <PackTable
          {...fields}
          field="curve"
          caption="Force curve"
          columns={curveColumns}
          kinds={curveKinds}
        />
      </section>
      <section class="card" aria-labelledby="damping-heading">
        <h2 id="damping-heading">Damping</h2>
        <Segmented
          legend="Was it tested at speed?"
          value={textOf(draft, "testedAtSpeed") === "yes" ? "yes" : "no"}
          onChange={(tested) => change((current) => setText(current, "testedAtSpeed", tested))}
          options={[
            { value: "no", name: "No" },
            { value: "yes", name: "Yes" },
          ]}
        />
        {textOf(draft, "testedAtSpeed") === "yes" ? (
          <>
            <PackTable
              {...fields}
              field="damping"
              caption="Damping"
              columns={dampingColumns}
              kinds={dampingKinds}
            />
            {base && <LossOfTest stop={base} />}
          </>
        ) : (
          <p class="small">
            Damping shows only at speed. Without such a test this stop is worked out undamped.
          </p>
        )}
      </section>
      <section class="stack-close" aria-labelledby="tests-heading">
        <h2 id="tests-heading">Tests</h2>
        {base === null ? (
          <p class="small">Save the stop first; then its tests can be imported.</p>
        ) : (
          <>
            <StopTests pack={pack} stop={base} unit={unit} />
            {editing.changed && (
              <p class="small soft">Save what you changed above before you import a test.</p>
            )}
            <ButtonLink icon="file" href={packItemHref("tests", base.id)}>
              Import a test
            </ButtonLink>
          </>
        )}
      </section>
      <Disclosure summary="No test data? Estimate from hardness">
        <BlockEstimate {...fields} />
      </Disclosure>
    </ItemScreen>
  );
}

/** What a test at speed gave beside the damping table; it is changed by importing a test. */
function LossOfTest({ stop }: { stop: PackStop }) {
  const { restLoss, staticShare, branches = [] } = stop;
  const percent = (share: number) => `${Number((100 * share).toPrecision(3))} %`;
  const parts = [
    ...(restLoss === undefined ? [] : [`${percent(restLoss)} of the force lost at rest`]),
    ...(staticShare === undefined ? [] : [`${percent(staticShare)} of the curve stays at rest`]),
    ...branches.map(({ tauS, share }) => `${percent(share)} fades within ${tauS} s`),
  ];
  if (parts.length === 0) return null;
  return <p class="small">From its test: {parts.join("; ")}.</p>;
}

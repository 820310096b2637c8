import { useMemo } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop } from "../../records/pack/pack.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
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
import { curveKinds, dampingKinds, freeHeightName, stopDraft, stopOfDraft } from "./stopDraft.ts";
import { useItemDraft } from "./useItemDraft.ts";

/** One stop of the pack, every field of it. */
const curveColumns = [
  { name: messages.depth, within: messages.depthOfAxis, metric: "mm", inches: "in" },
  { name: messages.force, within: messages.forceOfAxis, metric: "N", inches: "lbf" },
] as const;

const dampingColumns = [
  { name: messages.depth, within: messages.depthOfAxis, metric: "mm", inches: "in" },
  { name: messages.inWord, within: messages.inWithin, metric: "N·s/mm", inches: "lbf·s/in" },
  { name: messages.out, within: messages.outWithin, metric: "N·s/mm", inches: "lbf·s/in" },
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
      base === null ? messages.added({ name: own.name }) : messages.changed2({ name: own.name }),
    );
  };
  const estimated = textOf(draft, "estimatedHow") !== "";
  return (
    <ItemScreen heading={base?.name ?? messages.newStop} editing={editing} onKeep={keep}>
      {estimated && (
        <Notice tone="care">
          <p>
            <strong>{messages.estimate2}</strong>{" "}
            {messages.forceCurveOfThis({
              textOf: textOf(draft, "estimatedHow"),
              textOf2: textOf(draft, "estimatedShare"),
            })}
          </p>
        </Notice>
      )}
      <section class="card">
        <PackText {...fields} field="name" label={messages.nameWord} />
        <Segmented
          legend={messages.purpose}
          value={textOf(draft, "duty") === "carry" ? "carry" : "impact"}
          onChange={(duty) => change((current) => setText(current, "duty", duty))}
          options={[
            { value: "impact", name: messages.takesImpacts },
            { value: "carry", name: messages.helpsCarryLoad },
          ]}
        />
        <PackReading {...fields} field="freeHeight" name={freeHeightName} kind="length" />
        <PackNumber
          {...fields}
          field="usableCompressionMm"
          label={messages.usableCompression}
          hint={messages.howFarItMay}
          kind="length"
        />
        <PackNumber
          {...fields}
          field="outerDiameterMm"
          label={messages.outerDiameter}
          kind="length"
        />
        <PackText {...fields} field="material" label={messages.material} />
        <PackText {...fields} field="notes" label={messages.notes} maxLength={20_000} />
      </section>
      <PartFields {...fields} pack={pack} base={base} unit={unit} />
      <MountFields {...fields} of="stop" />
      <section class="card" aria-labelledby="curve-heading">
        <h2 id="curve-heading">
          {messages.forceCurveEstimate({ isEstimated: Boolean(estimated) })}
        </h2>
        <p class="small soft">{messages.pressedSlowlyEveryRow}</p>
        {trial.stop && <CurveChart stop={trial.stop} unit={unit} />}
        <PackTable
          {...fields}
          field="curve"
          caption={{ name: messages.forceCurve, within: messages.forceCurveWithin }}
          columns={curveColumns}
          kinds={curveKinds}
        />
      </section>
      <section class="card" aria-labelledby="damping-heading">
        <h2 id="damping-heading">{messages.damping}</h2>
        <Segmented
          legend={messages.wasItTestedAt}
          value={textOf(draft, "testedAtSpeed") === "yes" ? "yes" : "no"}
          onChange={(tested) => change((current) => setText(current, "testedAtSpeed", tested))}
          options={[
            { value: "no", name: messages.no },
            { value: "yes", name: messages.yes },
          ]}
        />
        {textOf(draft, "testedAtSpeed") === "yes" ? (
          <>
            <PackTable
              {...fields}
              field="damping"
              caption={{ name: messages.damping, within: messages.dampingOfAxis }}
              columns={dampingColumns}
              kinds={dampingKinds}
            />
            {base && <LossOfTest stop={base} />}
          </>
        ) : (
          <p class="small">{messages.dampingShowsOnlyAt}</p>
        )}
      </section>
      <section class="stack-close" aria-labelledby="tests-heading">
        <h2 id="tests-heading">{messages.tests}</h2>
        {base === null ? (
          <p class="small">{messages.saveStopFirstThen}</p>
        ) : (
          <>
            <StopTests pack={pack} stop={base} unit={unit} />
            {editing.changed && <p class="small soft">{messages.saveWhatYouChanged}</p>}
            <ButtonLink icon="file" href={packItemHref("tests", base.id)}>
              {messages.importTest}
            </ButtonLink>
          </>
        )}
      </section>
      <Disclosure summary={messages.noTestDataEstimate}>
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
    ...(restLoss === undefined ? [] : [messages.ofForceLostAt({ percent: percent(restLoss) })]),
    ...(staticShare === undefined
      ? []
      : [messages.ofCurveStaysAt({ percent: percent(staticShare) })]),
    ...branches.map(({ tauS, share }) => messages.fadesWithinS({ percent: percent(share), tauS })),
  ];
  if (parts.length === 0) return null;
  return <p class="small">{messages.fromItsTest({ parts: parts.join("; ") })}</p>;
}

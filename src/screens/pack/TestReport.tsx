import type { QuantityKind } from "../../physics/sentence.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { dateText } from "../../records/check/checkName.ts";
import { type LengthUnit, newtonsPerPoundForce } from "../../records/entry/units.ts";
import type { Pack, PackCycle, PackCycles, PackStop, PackTest } from "../../records/pack/pack.ts";
import { quantityText } from "../../saying/quantityText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { language } from "../../words/language.ts";
import { ScrolledTable } from "../charts/DataTable.tsx";
import { ButtonLink } from "../parts/Button.tsx";
import { PrintButton } from "../parts/PrintButton.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { conditionNames } from "./ConditionFields.tsx";
import { dampingText, dampingUnitOf } from "./DampingFound.tsx";
import { NoSuchItem } from "./ItemScreen.tsx";
import { KeptRemarks } from "./KeptRemarks.tsx";
import { packItemHref } from "./packRoutes.ts";
import { TestCharts } from "./TestCharts.tsx";
import { plotsOfPackTest } from "./testPlots.ts";
import "../styles/paper.css";
import "../styles/report.css";

/** A 95 % ± over a standard error. */
const coverage = 1.96;

/** One kept test of a stop on paper: figures, conditions, remarks, drawings. */
export function TestReport({
  pack,
  id,
  test: testId,
  unit,
}: {
  pack: Pack;
  id: string;
  test: string;
  unit: LengthUnit;
}) {
  const stop = pack.stops.find((each) => each.id === id);
  const test = stop?.tests?.find((each) => each.id === testId);
  const heading = useHeadingFocus(testId);
  if (!stop || !test) return <NoSuchItem what="stop" />;
  const blocks = test.blocks ?? (test.cycles ? [test.cycles] : []);
  return (
    <Screen
      wide
      top={
        <>
          <ButtonLink
            look="quiet"
            href={packItemHref("stop", stop.id)}
            icon="back"
            label={messages.to({ name: stop.name })}
          />
          <span class="screen-name">{messages.testOf({ name: stop.name })}</span>
        </>
      }
      actions={<PrintButton what="test" look="main" />}
    >
      <article class="report test-report">
        <header class="report-part">
          <h1 ref={heading} tabIndex={-1}>
            {messages.testOf({ name: stop.name })}
          </h1>
          <Facts stop={stop} test={test} unit={unit} />
        </header>
        <LossTable test={test} unit={unit} />
        <CurveTable test={test} unit={unit} />
        <DampingTable test={test} unit={unit} />
        {blocks.length > 0 && <BlockTables blocks={blocks} unit={unit} />}
        {test.remarks.length > 0 && (
          <section class="report-part">
            <h2>{messages.whatWasPutRight}</h2>
            <KeptRemarks test={test} unit={unit} />
          </section>
        )}
        <section class="report-part report-page">
          <h2>{messages.drawings}</h2>
          <TestCharts plots={plotsOfPackTest(test)} unit={unit} />
        </section>
      </article>
    </Screen>
  );
}

function Facts({ stop, test, unit }: { stop: PackStop; test: PackTest; unit: LengthUnit }) {
  const height = { kind: "length" as const, value: meanOf(stop.freeHeight) };
  const part = [stop.partNumber, stop.revision, stop.batch].filter(Boolean).join(", ");
  const facts: readonly (readonly [string, string])[] = [
    [messages.stopWord, messages.tall({ name: stop.name, height: quantityText(height, unit) })],
    [messages.part, part || messages.notGiven],
    [messages.file, test.file],
    [messages.rows2, test.rows.toLocaleString(language)],
    [messages.imported2, dateText(test.importedAt)],
    ...conditionNames.map(
      ([name, label]) => [label, test.conditions?.[name] ?? messages.notGiven] as const,
    ),
    [messages.printed, dateText(new Date().toISOString())],
  ];
  return (
    <dl class="pack-figures">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function percent([value, doubt]: readonly [number, number]): string {
  return `${(100 * value).toFixed(1)} ± ${(100 * doubt).toFixed(1)} %`;
}

function LossTable({ test, unit }: { test: PackTest; unit: LengthUnit }) {
  const { loss } = test;
  if (!loss) return null;
  const text = (kind: QuantityKind, value: number) => quantityText({ kind, value }, unit);
  const rows: readonly (readonly [string, string])[] = [
    [messages.shareOfCurveThat, percent(loss.staticShare)],
    [messages.lostAtRestShare, percent(loss.restLoss)],
    ...loss.branches.map(
      ([tauS, share, doubt]) =>
        [messages.fadesWithinS2({ tauS }), percent([share, doubt])] as const,
    ),
    [messages.fastestRow, text("speed", loss.fastestMmPerS)],
    ...(loss.misfitN === undefined
      ? []
      : [[messages.scatterOfWhatIs, text("force", loss.misfitN)] as const]),
  ];
  return (
    <Table caption={messages.lossAtSpeedEach} head={[messages.part, messages.found]} rows={rows} />
  );
}

/** A ± of force in two digits: in whole pounds that of a good load cell would read 0. */
function forceDoubtText(newtons: number, unit: LengthUnit): string {
  const value = unit === "in" ? newtons / newtonsPerPoundForce : newtons;
  const digits = value >= 100 ? value.toFixed(0) : value.toPrecision(2);
  return `${digits} ${unit === "in" ? "lbf" : "N"}`;
}

function CurveTable({ test, unit }: { test: PackTest; unit: LengthUnit }) {
  if (!test.curve?.length) return null;
  const text = (kind: QuantityKind, value: number) => quantityText({ kind, value }, unit);
  return (
    <Table
      caption={messages.staticCurveEachForce}
      head={[messages.depth, messages.force, "±"]}
      rows={test.curve.map(([depth, force, error]) => [
        text("length", depth),
        text("force", force),
        forceDoubtText(coverage * error, unit),
      ])}
    />
  );
}

function DampingTable({ test, unit }: { test: PackTest; unit: LengthUnit }) {
  if (!test.damping?.length) return null;
  const value = (pair: readonly [number, number] | null) =>
    dampingText(pair && [pair[0], coverage * pair[1]], unit);
  return (
    <Table
      caption={messages.dampingInEachWith({ dampingUnitOf: dampingUnitOf(unit) })}
      head={[messages.depth, messages.pressedDeeper2, messages.comingBack3]}
      rows={test.damping.map(({ depthMm, compressing, rebounding }) => [
        quantityText({ kind: "length", value: depthMm }, unit),
        value(compressing),
        value(rebounding),
      ])}
    />
  );
}

function BlockTables({ blocks, unit }: { blocks: readonly PackCycles[]; unit: LengthUnit }) {
  const text = (kind: QuantityKind, value: number | undefined) =>
    value === undefined ? "–" : quantityText({ kind, value }, unit);
  const factor = (value: number | null) => (value === null ? "–" : value.toPrecision(3));
  const both = (of: (cycle: PackCycle) => string, { first, later }: PackCycles) =>
    first && later ? `${of(first)} / ${of(later)}` : "–";
  return (
    <>
      <Table
        caption={messages.cyclesBlockByBlock}
        head={[
          messages.block,
          messages.cycles2,
          messages.speedUpTo,
          messages.frequency,
          messages.halfStroke,
          messages.aboutDepth,
          messages.dynamicStiffness,
          messages.lossFactor,
          messages.energyIn,
          messages.lostCycle,
        ]}
        rows={blocks.map((block, index) => [
          String(index + 1),
          String(block.count),
          text(
            "speed",
            block.greatestSpeedMmPerS ?? 2 * Math.PI * block.frequencyHz * block.amplitudeMm,
          ),
          `${block.frequencyHz.toPrecision(3)} Hz`,
          text("length", block.amplitudeMm),
          text("length", block.meanDepthMm),
          text("rate", block.dynamicRateNPerMm),
          factor(block.lossFactor),
          text("energy", block.energyInJ),
          text("energy", block.lossJ),
        ])}
      />
      {blocks.some(({ first }) => first) && (
        <Table
          caption={messages.firstCycleMeanOf}
          head={[
            messages.block,
            messages.greatestForce,
            messages.dynamicStiffness,
            messages.lossFactor,
            messages.lostCycle,
          ]}
          rows={blocks.map((block, index) => [
            String(index + 1),
            both(({ peakForceN }) => text("force", peakForceN), block),
            both(({ dynamicRateNPerMm }) => text("rate", dynamicRateNPerMm), block),
            both(({ lossFactor }) => factor(lossFactor), block),
            both(({ lossJ }) => text("energy", lossJ), block),
          ])}
        />
      )}
    </>
  );
}

function Table({
  head,
  ...table
}: {
  caption: string;
  head: readonly string[];
  rows: readonly (readonly string[])[];
}) {
  return (
    <ScrolledTable
      look="report-table"
      box="report-part report-table-box"
      columns={head.map((name) => ({ name }))}
      {...table}
    />
  );
}

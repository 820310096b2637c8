import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import {
  createTestImporter,
  type ImportProgress,
  type TestImporter,
} from "../../compute/testImporter.ts";
import type { Fault } from "../../physics/outcome.ts";
import { staticSpeedMmPerS } from "../../physics/stopTests/index.ts";
import { meanOf } from "../../physics/uncertainty/index.ts";
import { parseNumber } from "../../records/entry/lengthEntry.ts";
import { type LengthUnit, mmPerInch } from "../../records/entry/units.ts";
import type { Pack, PackStop } from "../../records/pack/pack.ts";
import type { TestImport } from "../../records/testRows/testFile.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { language } from "../../words/language.ts";
import { filled } from "../filled.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Choices } from "../parts/Choices.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { type ChosenColumns, ColumnChoice } from "./ColumnChoice.tsx";
import { ImportedTest } from "./ImportedTest.tsx";
import { NoSuchItem } from "./ItemScreen.tsx";
import { packItemHref } from "./packRoutes.ts";

type Work =
  | { readonly state: "idle" }
  | { readonly state: "reading"; readonly progress: ImportProgress }
  | { readonly state: "fault"; readonly fault: Fault }
  | { readonly state: "done"; readonly tests: readonly TestImport[] };

/** Test data of one stop: a file is read beside the screen, looked at, and only then kept. */
export function TestImportScreen({
  pack,
  id,
  unit,
  startImporter = createTestImporter,
}: {
  pack: Pack;
  id: string;
  unit: LengthUnit;
  startImporter?: (() => TestImporter) | undefined;
}) {
  const stop = pack.stops.find((each) => each.id === id);
  if (!stop) return <NoSuchItem what="stop" />;
  return <Importing pack={pack} stop={stop} unit={unit} startImporter={startImporter} />;
}

function Importing({
  pack,
  stop,
  unit,
  startImporter,
}: {
  pack: Pack;
  stop: PackStop;
  unit: LengthUnit;
  startImporter: () => TestImporter;
}) {
  const heading = useHeadingFocus("import");
  const picker = useRef<HTMLInputElement>(null);
  const importer = useMemo(() => startImporter(), [startImporter]);
  const cancel = useRef<() => void>(() => undefined);
  const [file, setFile] = useState<File | null>(null);
  const [work, setWork] = useState<Work>({ state: "idle" });
  const inches = unit === "in";
  const mmPerUnit = inches ? mmPerInch : 1;
  const [threshold, setThreshold] = useState(
    String(Number((staticSpeedMmPerS / mmPerUnit).toPrecision(2))),
  );
  const [columns, setColumns] = useState<ChosenColumns | null>(null);
  const [part, setPart] = useState<number | null>(null);
  useEffect(() => () => importer.dispose(), [importer]);
  const result = useRef<HTMLDivElement>(null);
  const isRead = work.state === "done" || work.state === "fault";
  useEffect(() => {
    if (isRead) result.current?.scrollIntoView?.({ block: "start" });
  }, [isRead]);

  const speed = parseNumber(threshold, "aboveZero");
  const start = (chosen: File, chosenColumns: ChosenColumns | null) => {
    cancel.current();
    setFile(chosen);
    setWork({
      state: "reading",
      progress: { phase: "reading", bytes: 0, totalBytes: chosen.size, rows: 0 },
    });
    cancel.current = importer.start(
      chosen,
      {
        onProgress: (progress) => setWork({ state: "reading", progress }),
        onDone: (tests) => {
          setPart(tests.length === 1 ? 0 : null);
          setWork({ state: "done", tests });
        },
        onFault: (fault) => setWork({ state: "fault", fault }),
      },
      {
        ...(chosenColumns && { columns: chosenColumns }),
        ...(speed.ok && { staticSpeedMmPerS: speed.value * mmPerUnit }),
        stop: { freeHeightMm: meanOf(stop.freeHeight), curve: stop.curve },
      },
    );
  };
  const pick = (list: FileList | null) => {
    const chosen = list?.[0];
    if (picker.current) picker.current.value = "";
    if (!chosen) return;
    setColumns(null);
    start(chosen, null);
  };
  const shown = work.state === "done" && part !== null ? work.tests[part] : undefined;
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
          <span class="screen-name">{stop.name}</span>
        </>
      }
      actions={
        work.state === "reading" ? (
          <Button
            icon="cross"
            onClick={() => {
              cancel.current();
              setWork({ state: "idle" });
            }}
          >
            {messages.stopReading}
          </Button>
        ) : (
          <Button
            look={work.state === "done" ? "plain" : "main"}
            icon="file"
            onClick={() => picker.current?.click()}
          >
            {work.state === "idle" ? messages.chooseFile : messages.anotherFile}
          </Button>
        )
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {messages.importTest}
      </h1>
      <input
        ref={picker}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        class="unseen"
        tabIndex={-1}
        aria-label={messages.testFile}
        onChange={(event) => pick(event.currentTarget.files)}
      />
      <p>
        {filled(messages.textFileOfColumns, {
          strong: <strong>{messages.timeDepthForce}</strong>,
          strong2: <strong>{messages.depthSpeedForce}</strong>,
        })}
      </p>
      <p class="small soft">{messages.slowRampGivesForce}</p>
      <TextField
        label={messages.rowsUpToThis}
        value={threshold}
        unit={inches ? "in/s" : "mm/s"}
        keys="decimal"
        onInput={setThreshold}
        {...(!speed.ok && {
          tone: "no" as const,
          message: sentenceText(speed.fault.sentence, unit),
        })}
      />
      {file && work.state !== "reading" && (
        <div class="row">
          <Button onClick={() => start(file, columns)} disabled={!speed.ok}>
            {messages.readAgain({ name: file.name })}
          </Button>
        </div>
      )}
      {work.state === "reading" && <Reading progress={work.progress} name={file?.name ?? ""} />}
      {isRead && (
        <div ref={result} class="stack">
          {work.state === "fault" && (
            <>
              <Notice tone="no" live>
                <p>{sentenceText(work.fault.sentence, unit)}</p>
              </Notice>
              {file && columnFaults.has(work.fault.code) && (
                <ColumnChoice
                  file={file}
                  onColumns={(chosen) => {
                    setColumns(chosen);
                    start(file, chosen);
                  }}
                />
              )}
            </>
          )}
          {work.state === "done" && work.tests.length > 1 && (
            <WhichTest tests={work.tests} part={part} onPart={setPart} />
          )}
          {work.state === "done" && shown && (
            <ImportedTest key={part} pack={pack} stop={stop} imported={shown} unit={unit} />
          )}
        </div>
      )}
    </Screen>
  );
}

/** A file may hold several tests: the person says which one is this stop's. */
function WhichTest({
  tests,
  part,
  onPart,
}: {
  tests: readonly TestImport[];
  part: number | null;
  onPart: (part: number) => void;
}) {
  return (
    <Choices
      legend={messages.thisFileHoldsTests({ tests: tests.length })}
      value={part === null ? null : String(part)}
      onChange={(value) => onPart(Number(value))}
      options={tests.map(({ file }, index) => ({
        value: String(index),
        name: file.part.title || messages.test2({ index: index + 1 }),
        hint: messages.rows({ rows: file.rows.toLocaleString(language) }),
      }))}
    />
  );
}

/** Faults that choosing the columns by hand can meet. */
const columnFaults: ReadonlySet<string> = new Set([
  "headingsNotKnown",
  "columnMissing",
  "columnsTwice",
  "unitNotTold",
  "unitNotKnown",
  "unitOfAnother",
  "columnsNotUsable",
]);

function Reading({ progress, name }: { progress: ImportProgress; name: string }) {
  const share = progress.totalBytes > 0 ? progress.bytes / progress.totalBytes : 0;
  return (
    <div class="progress-line" role="status">
      <label>
        {progress.phase === "reading" ? messages.reading({ name }) : messages.workingItOut}
        <progress max={1} {...(progress.phase === "reading" && { value: Math.min(1, share) })} />
      </label>
      <p class="small soft">
        {messages.rowsOfFile({
          rows: progress.rows.toLocaleString(language),
          share: Math.round(100 * share),
        })}
      </p>
    </div>
  );
}

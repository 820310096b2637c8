import { useEffect, useMemo, useState } from "preact/hooks";
import { meanOf } from "../../physics/uncertainty/index.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import { isOffered, type Pack, type PackStop } from "../../records/pack/pack.ts";
import { makerOfPack, type PartLabel, partCodeText } from "../../records/pack/partCode.ts";
import { partText } from "../../records/pack/stopFacts.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import { drawCode, quietZone } from "../../sharing/qrDrawing.ts";
import * as messages from "../../words/compiled/screens/labels.ts";
import { MoreFound } from "../choosing/MoreFound.tsx";
import { mostShown, useFound } from "../choosing/search.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { CheckLine } from "../parts/Choices.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { PrintButton } from "../parts/PrintButton.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { usePackInUse } from "../referencePack.ts";
import "../styles/paper.css";
import "./labels.css";

/** Width of a code on its label, mm: of one that holds more, so much that its modules stay large enough. */
const codeWidthMm = 26;
/** A phone's camera reads these from a hand's width. Common practice. */
const leastModuleMm = 0.45;

/** Letters of a part number that have room on the usual label. */
const longNumber = 24;

const mostCopies = 200;
const mostLabels = 2000;
/** A pause in typing after which the sheet follows. */
const typingPauseMs = 300;

type LabelledStop = PackStop & { readonly partNumber: string };

function hasNumber(stop: PackStop): stop is LabelledStop {
  return stop.partNumber !== undefined;
}

/** Labels for the bags of parts, to be printed: a code that the check's camera reads, and the same in words. */
export function LabelsPlace({ unit }: { unit: LengthUnit }) {
  const inUse = usePackInUse();
  return inUse ? <Labels pack={inUse.pack} unit={unit} /> : <OneMoment />;
}

function Labels({ pack, unit }: { pack: Pack; unit: LengthUnit }) {
  const heading = useHeadingFocus("labels");
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [search, setSearch] = useState("");
  const [batch, setBatch] = useState("");
  const [copiesText, setCopies] = useState("1");
  const stops = useMemo(() => pack.stops.filter(hasNumber), [pack]);
  const found = useFound(stops, (stop) => `${stop.name} ${said(partText(stop))}`, search);
  const shown = found.slice(0, mostShown);
  const copies = Number(copiesText);
  const isCount = Number.isInteger(copies) && copies >= 1 && copies <= mostCopies;
  const printed = useSettled(batch);
  const labelled = useMemo(() => stops.filter(({ id }) => chosen.has(id)), [stops, chosen]);
  const asked = isCount ? copies * labelled.length : 0;
  const count = Math.min(asked, mostLabels);
  const sheet = useMemo(
    () => <Sheet pack={pack} stops={labelled} count={count} batch={printed} unit={unit} />,
    [pack, labelled, count, printed, unit],
  );
  const without = pack.stops.length - stops.length;
  const put = (id: string, wanted: boolean) =>
    setChosen((before) => {
      const after = new Set(before);
      if (wanted) after.add(id);
      else after.delete(id);
      return after;
    });
  return (
    <Screen
      wide
      top={
        <>
          <ButtonLink look="quiet" href="#/pack" icon="back" label={messages.toPartsLibrary} />
          <span class="screen-name">{messages.labels}</span>
        </>
      }
      actions={
        <PrintButton
          what="labels"
          look="main"
          disabled={count === 0 || printed !== batch}
          label={
            count === 0
              ? messages.printLabels
              : messages.printLabel({ count, count2: count === 1 ? "" : "s" })
          }
        />
      }
    >
      <div class="stack labels-choice">
        <h1 ref={heading} tabIndex={-1}>
          {messages.labelsForParts}
        </h1>
        <p>{messages.putOneOnEach}</p>
        {without > 0 && <p class="small soft">{messages.stopHas({ without })}</p>}
        <div class="labels-fields">
          <TextField
            label={messages.batch}
            hint={messages.onEveryLabelOf}
            value={batch}
            maxLength={60}
            onInput={setBatch}
          />
          <TextField
            label={messages.labelsOfEachPart}
            keys="decimal"
            value={copiesText}
            onInput={setCopies}
            {...(!isCount && {
              tone: "no" as const,
              message: messages.wholeNumberFrom1({ mostCopies }),
            })}
          />
        </div>
        {asked > count && (
          <Notice tone="care" live>
            <p>{messages.labelsAreAskedFor({ asked, mostLabels })}</p>
          </Notice>
        )}
        <TextField
          label={messages.search}
          value={search}
          onInput={setSearch}
          hint={messages.partNumberName}
        />
        <div class="row">
          <Button
            onClick={() =>
              setChosen(new Set([...chosen, ...found.filter(isOffered).map(({ id }) => id)]))
            }
          >
            {messages.tickAllThatAre}
          </Button>
          <Button disabled={chosen.size === 0} onClick={() => setChosen(new Set())}>
            {messages.tickNone}
          </Button>
        </div>
        <div class="labels-parts">
          {shown.map((stop) => (
            <CheckLine
              key={stop.id}
              checked={chosen.has(stop.id)}
              onChange={(wanted) => put(stop.id, wanted)}
              hint={stop.name}
            >
              {said(partText(stop))}
              {!isOffered(stop) && messages.notOfferedAnyMore}
            </CheckLine>
          ))}
        </div>
        <MoreFound found={found.length} shown={shown.length} />
      </div>
      {sheet}
    </Screen>
  );
}

/** A text once nobody types on: the codes of a sheet are not drawn anew with each key. */
function useSettled(text: string): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const pause = setTimeout(() => setSettled(text), typingPauseMs);
    return () => clearTimeout(pause);
  }, [text]);
  return settled;
}

/** `count` labels, as many of each part; the last parts have none where the sheet is full. */
function Sheet({
  pack,
  stops,
  count,
  batch,
  unit,
}: {
  pack: Pack;
  stops: readonly LabelledStop[];
  count: number;
  batch: string;
  unit: LengthUnit;
}) {
  if (count === 0) return null;
  const copies = Math.ceil(count / stops.length);
  const code = { maker: makerOfPack(pack), batch: batch.trim() || undefined };
  const drawn = stops.flatMap((stop) => {
    const picture = drawCode(partCodeText(labelOf(stop, code)));
    return Array.from({ length: copies }, () => ({ stop, picture }));
  });
  return (
    <section class="labels-sheet" aria-label={messages.sheetOfLabels}>
      {drawn.slice(0, count).map(({ stop, picture }, place) => (
        <Label
          key={`${stop.id} ${place}`}
          pack={pack}
          label={labelOf(stop, code)}
          stop={stop}
          picture={picture}
          unit={unit}
        />
      ))}
    </section>
  );
}

function labelOf(
  { partNumber, revision }: LabelledStop,
  { maker, batch }: { readonly maker: string; readonly batch: string | undefined },
): PartLabel {
  return {
    maker,
    partNumber,
    ...(revision !== undefined && { revision }),
    ...(batch !== undefined && { batch }),
  };
}

function Label({
  pack,
  stop,
  label,
  picture,
  unit,
}: {
  pack: Pack;
  stop: LabelledStop;
  label: PartLabel;
  picture: ReturnType<typeof drawCode>;
  unit: LengthUnit;
}) {
  const { partNumber, revision, batch } = label;
  if (!picture.ok) {
    return (
      <Notice tone="no">
        <p>{messages.partNumberIsToo({ partNumber })}</p>
      </Notice>
    );
  }
  const side = picture.value.size + 2 * quietZone;
  const length = (value: number) => quantityText({ kind: "length", value }, unit);
  const width = Math.max(codeWidthMm, leastModuleMm * side);
  const isWide = width > codeWidthMm || partNumber.length > longNumber;
  return (
    <div
      class={`part-label ${isWide ? "part-label-wide" : ""}`}
      style={{ "--code-width": `${width.toFixed(1)}mm` }}
    >
      <svg
        role="img"
        aria-label={messages.codeOf({ part: said(partText(label)) })}
        viewBox={`${-quietZone} ${-quietZone} ${side} ${side}`}
        data-modules={side}
      >
        <rect x={-quietZone} y={-quietZone} width={side} height={side} fill="#ffffff" />
        <path d={picture.value.path} fill="#000000" />
      </svg>
      <div>
        <strong>{partNumber}</strong>
        {revision !== undefined && <span>{messages.revision({ revision })}</span>}
        {batch !== undefined && <span>{messages.batch2({ batch })}</span>}
        <span class="part-label-name">{stop.name}</span>
        <span>{messages.high({ meanOf: length(meanOf(stop.freeHeight)) })}</span>
        <span class="part-label-name">{pack.maker?.name ?? pack.name}</span>
      </div>
    </div>
  );
}

import type { RefObject } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { DeskCheck } from "../../records/review/decision.ts";
import { type DeskView, type SortKey, viewed, wholeView } from "../../records/review/deskList.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import * as messages from "../../words/compiled/screens/desk.ts";
import { language } from "../../words/language.ts";
import { checksHref } from "../addresses.ts";
import { useDrop } from "../exchange/useDrop.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { SelectField, TextField } from "../parts/Field.tsx";
import { canChooseFolder } from "../parts/folderChoice.ts";
import { Notice } from "../parts/Notice.tsx";
import { OneMoment } from "../parts/OneMoment.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { useWide } from "../parts/useWide.ts";
import { CheckList } from "./CheckList.tsx";
import { deskFindingsHref } from "./deskRoutes.ts";
import { ImportPanel } from "./ImportPanel.tsx";
import { SharedBar } from "./shared/SharedBar.tsx";
import { sourceOfText, sourcesOfDrop } from "./sources.ts";
import type { Desk } from "./useDesk.ts";
import { WaysIn } from "./WaysIn.tsx";
import { countWords } from "./words.ts";

export interface ListPlace {
  readonly view: DeskView;
  readonly at: string | null;
}

const sorts: readonly { value: SortKey; text: string }[] = [
  { value: "new", text: messages.newFirst },
  { value: "severity", text: messages.severity },
  { value: "age", text: messages.age },
  { value: "vehicle", text: messages.vehicle },
  { value: "axle", text: messages.axle2 },
  { value: "who", text: messages.who },
  { value: "state", text: messages.state },
];

/** As many as surely show in a box of half a narrow phone. */
const lettersInHalf = 12;

/** The checks that came in, and the ways in for more. */
export function DeskList({
  desk,
  unit,
  place: { view, at },
  onPlace,
  onOpen,
}: {
  desk: Desk;
  unit: LengthUnit;
  place: ListPlace;
  onPlace: (place: ListPlace) => void;
  onOpen: (check: DeskCheck) => void;
}) {
  const heading = useHeadingFocus("desk");
  const search = useRef<HTMLInputElement>(null);
  const main = useRef<HTMLDivElement>(null);
  const [pasting, setPasting] = useState(false);
  const [saved, setSaved] = useState<Fault | null>(null);
  const [busy, setBusy] = useState<string | null>(null);
  const { checks, fault, take } = desk;
  const { first } = desk;
  const shown = useMemo(
    () => (checks ? viewed(checks, view) : (first?.checks ?? [])),
    [checks, first, view],
  );
  const count = checks?.length ?? first?.count ?? 0;
  const change = (part: Partial<DeskView>) => onPlace({ at, view: { ...view, ...part } });
  const list = () => main.current?.querySelector<HTMLElement>(".desk-list");

  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const { target } = event;
      const typing = target instanceof Element && target.matches("input, textarea, select");
      if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey) {
        event.preventDefault();
        search.current?.focus();
      }
      if (event.key === "Escape" && target === search.current) {
        if (search.current?.value) change({ search: "" });
        list()?.focus();
      }
    };
    window.addEventListener("keydown", key);
    return () => window.removeEventListener("keydown", key);
  });

  const over = useDrop((transfer) => take(sourcesOfDrop(transfer)));

  const save = async (what: string, work: () => Promise<Fault | null>) => {
    setBusy(what);
    setSaved(await work());
    setBusy(null);
  };
  const saveTable = () =>
    save("table", async () =>
      desk.store ? (await import("./saveFiles.ts")).saveTable(desk.store) : null,
    );
  const saveBackup = () =>
    save("backup", async () =>
      desk.store ? (await import("./saveFiles.ts")).saveBackup(desk.store) : null,
    );

  const roomy = useWide(1200);
  const aboveList = roomy && (count > 0 || checks === null);
  const ways = (
    <WaysIn desk={desk} boxed={!aboveList && count === 0} onPaste={() => setPasting(true)} />
  );

  return (
    <Screen
      wide
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          {aboveList ? ways : <span class="screen-name">{messages.reviewDesk}</span>}
        </>
      }
      actions={
        <div class="desk-actions">
          <ButtonLink href={deskFindingsHref}>{messages.whatTheyTell}</ButtonLink>
          <Button onClick={saveTable} disabled={!checks?.length || busy !== null}>
            {busy === "table" ? messages.writing : messages.saveTableCsv}
          </Button>
          <Button onClick={saveBackup} disabled={!desk.store || busy !== null}>
            {busy === "backup" ? messages.writing : messages.saveBackup}
          </Button>
        </div>
      }
    >
      <div ref={main} class={over ? "desk-stack desk-over" : "desk-stack"}>
        <div class="desk-head">
          <h1 ref={heading} tabIndex={-1}>
            {messages.checksSentToThis}
          </h1>
          {count > 0 && (
            <p class="small soft" role="status">
              {checks === null || shown.length === count
                ? countWords(count, "check")
                : messages.ofWord({
                    shown: shown.length.toLocaleString(language),
                    count: countWords(count, "check"),
                  })}
              .<span class="desk-keys"> {messages.keysSearchArrowsEnter}</span>
            </p>
          )}
          {desk.shared && <SharedBar shared={desk.shared} />}
        </div>
        {fault && (
          <Notice tone="no" live>
            <p>{sentenceText(fault.sentence, unit)}</p>
          </Notice>
        )}
        {saved && (
          <Notice tone="no" live>
            <p>{sentenceText(saved.sentence, unit)}</p>
          </Notice>
        )}
        {!aboveList &&
          (count > 0 ? <Disclosure summary={messages.takeInMoreChecks}>{ways}</Disclosure> : ways)}
        <ImportPanel desk={desk} unit={unit} />
        {checks === null && first === null && <OneMoment />}
        {count > 0 && (
          <>
            <Filters
              view={view}
              change={change}
              searchRef={search}
              onList={() => list()?.focus()}
            />
            {shown.length === 0 ? (
              <div class="row">
                <p>{messages.noCheckIsLike}</p>
                <Button onClick={() => onPlace({ at, view: wholeView })}>{messages.showAll}</Button>
              </div>
            ) : (
              <CheckList
                checks={shown}
                at={at}
                onAt={(checkId) => onPlace({ view, at: checkId })}
                onOpen={onOpen}
                shared={desk.shared}
              />
            )}
          </>
        )}
        <p class="small soft">
          {messages.everyCheckIsComputed({
            canChooseFolder: Boolean(canChooseFolder()),
            hasState: Boolean(desk.shared?.state),
          })}
        </p>
      </div>
      {pasting && (
        <PasteDialog
          onLeave={() => setPasting(false)}
          onText={(text) => {
            setPasting(false);
            desk.take(sourceOfText(text));
          }}
        />
      )}
    </Screen>
  );
}

/** A pause in typing after which the list follows. */
const searchPauseMs = 150;

function Filters({
  view,
  change,
  searchRef,
  onList,
}: {
  view: DeskView;
  change: (part: Partial<DeskView>) => void;
  searchRef: RefObject<HTMLInputElement | null>;
  onList: () => void;
}) {
  const wide = useWide(800);
  const [typed, setTyped] = useState(view.search);
  const changeNow = useRef(change);
  changeNow.current = change;
  useEffect(() => setTyped(view.search), [view.search]);
  useEffect(() => {
    if (typed === view.search) return;
    const timer = setTimeout(() => changeNow.current({ search: typed }), searchPauseMs);
    return () => clearTimeout(timer);
  }, [typed, view.search]);
  const more = (
    <>
      <SelectField
        label={messages.verdict}
        lettersInBox={lettersInHalf}
        value={view.verdict}
        options={[
          { value: "all", text: messages.all },
          { value: "no", text: messages.doesNotFit },
          { value: "unsure", text: messages.notSure },
          { value: "care", text: messages.takeCare },
          { value: "ok", text: messages.fits },
          { value: "waiting", text: messages.notComputedYet },
        ]}
        onChange={(verdict) => change({ verdict: verdict as DeskView["verdict"] })}
      />
      <SelectField
        label={messages.state}
        lettersInBox={lettersInHalf}
        value={view.state}
        options={[
          { value: "all", text: messages.all },
          { value: "new", text: messages.newWord },
          { value: "askedAgain", text: messages.askedAgain },
          { value: "otherPart", text: messages.otherPartAdvised },
          { value: "accepted", text: messages.accepted },
        ]}
        onChange={(state) => change({ state: state as DeskView["state"] })}
      />
      <SelectField
        label={messages.axle2}
        lettersInBox={lettersInHalf}
        value={view.axle}
        options={[
          { value: "all", text: messages.both },
          { value: "front", text: messages.front },
          { value: "rear", text: messages.rear },
        ]}
        onChange={(axle) => change({ axle: axle as DeskView["axle"] })}
      />
      <SelectField
        label={messages.sortBy}
        lettersInBox={lettersInHalf}
        value={view.sort}
        options={sorts}
        onChange={(sort) => change({ sort: sort as SortKey, reversed: false })}
      />
      <div class="desk-toggles">
        <Button pressed={view.reversed} onClick={() => change({ reversed: !view.reversed })}>
          {messages.reverse}
        </Button>
        <Button pressed={view.onlyOdd} onClick={() => change({ onlyOdd: !view.onlyOdd })}>
          {messages.oddReadingsOnly}
        </Button>
      </div>
    </>
  );
  return (
    <div class="desk-filters">
      <TextField
        label={messages.search}
        value={typed}
        onInput={setTyped}
        onEnter={onList}
        inputRef={searchRef}
        maxLength={200}
      />
      {wide ? more : <Disclosure summary={messages.sortAndFilter}>{more}</Disclosure>}
    </div>
  );
}

function PasteDialog({ onLeave, onText }: { onLeave: () => void; onText: (text: string) => void }) {
  const [text, setText] = useState("");
  return (
    <Dialog
      heading={messages.pasteLinks}
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>{messages.cancel}</Button>
          <Button look="main" disabled={text.trim() === ""} onClick={() => onText(text)}>
            {messages.takeThemIn}
          </Button>
        </>
      }
    >
      <label class="field">
        <span class="field-label">{messages.linksOrMessagesWith}</span>
        <textarea
          class="paste-text"
          rows={8}
          value={text}
          autocomplete="off"
          spellcheck={false}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
    </Dialog>
  );
}

import type { RefObject } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Fault } from "../../physics/outcome.ts";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { DeskCheck } from "../../records/review/decision.ts";
import { type DeskView, type SortKey, viewed, wholeView } from "../../records/review/deskList.ts";
import { checksHref } from "../addresses.ts";
import { useDrop } from "../exchange/useDrop.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { Disclosure } from "../parts/Disclosure.tsx";
import { SelectField, TextField } from "../parts/Field.tsx";
import { canChooseFolder } from "../parts/folderChoice.ts";
import { Notice } from "../parts/Notice.tsx";
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
  { value: "new", text: "New first" },
  { value: "severity", text: "Severity" },
  { value: "age", text: "Age" },
  { value: "vehicle", text: "Vehicle" },
  { value: "axle", text: "Axle" },
  { value: "who", text: "Who" },
  { value: "state", text: "State" },
];

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
          <ButtonLink look="quiet" href={checksHref} icon="back" label="All checks" />
          <span class="screen-name">Review desk</span>
          {aboveList && ways}
        </>
      }
      actions={
        <div class="desk-actions">
          <ButtonLink href={deskFindingsHref}>What they tell</ButtonLink>
          <Button onClick={saveTable} disabled={!checks?.length || busy !== null}>
            {busy === "table" ? "Writing …" : "Save a table (CSV)"}
          </Button>
          <Button onClick={saveBackup} disabled={!desk.store || busy !== null}>
            {busy === "backup" ? "Writing …" : "Save a backup"}
          </Button>
        </div>
      }
    >
      <div ref={main} class={over ? "desk-stack desk-over" : "desk-stack"}>
        <div class="desk-head">
          <h1 ref={heading} tabIndex={-1}>
            Checks sent to this review desk
          </h1>
          {count > 0 && (
            <p class="small soft" role="status">
              {checks === null || shown.length === count
                ? countWords(count, "check")
                : `${shown.length.toLocaleString("en-GB")} of ${countWords(count, "check")}`}
              .<span class="desk-keys"> Keys: / search, arrows, Enter opens, Esc goes back.</span>
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
          (count > 0 ? <Disclosure summary="Take in more checks">{ways}</Disclosure> : ways)}
        <ImportPanel desk={desk} unit={unit} />
        {checks === null && first === null && <p class="soft">One moment …</p>}
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
                <p>No check is like that.</p>
                <Button onClick={() => onPlace({ at, view: wholeView })}>Show all</Button>
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
          Every check is computed here, from its readings; what the sender's device said is not
          used. {canChooseFolder() && "Files and folders can be dropped anywhere on this page. "}
          {desk.shared?.state
            ? "Checks, decisions and replies go between this machine and the shared desk, nowhere else."
            : "Nothing leaves this machine but what you send yourself."}
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
        label="Verdict"
        value={view.verdict}
        options={[
          { value: "all", text: "All" },
          { value: "no", text: "Does not fit" },
          { value: "unsure", text: "Not sure" },
          { value: "care", text: "Take care" },
          { value: "ok", text: "Fits" },
          { value: "waiting", text: "Not computed yet" },
        ]}
        onChange={(verdict) => change({ verdict: verdict as DeskView["verdict"] })}
      />
      <SelectField
        label="State"
        value={view.state}
        options={[
          { value: "all", text: "All" },
          { value: "new", text: "New" },
          { value: "askedAgain", text: "Asked again" },
          { value: "otherPart", text: "Other part advised" },
          { value: "accepted", text: "Accepted" },
        ]}
        onChange={(state) => change({ state: state as DeskView["state"] })}
      />
      <SelectField
        label="Axle"
        value={view.axle}
        options={[
          { value: "all", text: "Both" },
          { value: "front", text: "Front" },
          { value: "rear", text: "Rear" },
        ]}
        onChange={(axle) => change({ axle: axle as DeskView["axle"] })}
      />
      <SelectField
        label="Sort by"
        value={view.sort}
        options={sorts}
        onChange={(sort) => change({ sort: sort as SortKey, reversed: false })}
      />
      <div class="desk-toggles">
        <Button pressed={view.reversed} onClick={() => change({ reversed: !view.reversed })}>
          Reverse
        </Button>
        <Button pressed={view.onlyOdd} onClick={() => change({ onlyOdd: !view.onlyOdd })}>
          Odd readings only
        </Button>
      </div>
    </>
  );
  return (
    <div class="desk-filters">
      <TextField
        label="Search"
        value={typed}
        onInput={setTyped}
        onEnter={onList}
        inputRef={searchRef}
        maxLength={200}
      />
      {wide ? more : <Disclosure summary="Sort and filter">{more}</Disclosure>}
    </div>
  );
}

function PasteDialog({ onLeave, onText }: { onLeave: () => void; onText: (text: string) => void }) {
  const [text, setText] = useState("");
  return (
    <Dialog
      heading="Paste links"
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>Cancel</Button>
          <Button look="main" disabled={text.trim() === ""} onClick={() => onText(text)}>
            Take them in
          </Button>
        </>
      }
    >
      <label class="field">
        <span class="field-label">Links, or messages with links in them</span>
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

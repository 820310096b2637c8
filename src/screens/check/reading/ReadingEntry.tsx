import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { ReadingId } from "../../../physics/readings/index.ts";
import { capital } from "../../../physics/sentence.ts";
import type { StoredCheck } from "../../../records/check/storedCheck.ts";
import { type Entry, readEntry } from "../../../records/entry/entry.ts";
import { limitKindOf } from "../../../records/entry/entryPath.ts";
import { catalogueEntry, entryName, entryUnit } from "../../../records/entry/readingCatalogue.ts";
import { sourceIn, sourceWords } from "../../../records/entry/readingSource.ts";
import { toolGroupOf, usualReach } from "../../../records/entry/readingTools.ts";
import type { EntryUnit } from "../../../records/entry/units.ts";
import { setEntry } from "../../../records/filling/changes.ts";
import { packRemark } from "../../../records/filling/platforms.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/reading.ts";
import type { Change } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Segmented } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { useScreenAwake } from "../../parts/useScreenAwake.ts";
import type { Preferences } from "../../preferences.ts";
import { referencePack } from "../../referencePack.ts";
import { spokenEntry } from "../../voice/spokenEntry.ts";
import { useReadBack } from "../../voice/useReadBack.ts";
import { NumberField } from "../keypad/NumberField.tsx";
import { useSeenAboveKeys } from "../keypad/useSeenAboveKeys.ts";
import { PhotoField } from "../photo/PhotoField.tsx";
import { photosOf } from "../photo/photos.ts";
import { entryRemarks, geometryRemark } from "../remarks.ts";
import { useSettled } from "../settled.ts";
import { isMinus, withSign } from "./angleSign.ts";
import { equivalentText } from "./equivalent.ts";
import { ToolField } from "./ToolField.tsx";

interface Props {
  readonly id: ReadingId;
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  /** Words for the two signs of an angle; absent where a minus means nothing. */
  readonly signs?: { readonly plus: string; readonly minus: string } | undefined;
  readonly onEnter?: () => void;
  /** The field is entered as the screen opens. */
  readonly first?: boolean;
  /** How it is taken: between the number and what else can be said of it. */
  readonly children?: ComponentChildren;
  /** For who has made three checks: `how` it is taken, repeats and photos stand behind lines. */
  readonly brief?: boolean;
  readonly how?: ComponentChildren;
}

/** The entry of a reading as it stands, or an empty one in the person's own unit, for their own tool. */
export function entryOf(stored: StoredCheck, id: ReadingId, preferences: Preferences): Entry {
  const { kind } = catalogueEntry(id);
  const known = stored.entries[id];
  if (known) return known;
  const unit: EntryUnit = entryUnit(kind, preferences.length);
  const group = toolGroupOf(id);
  const tool = group && (preferences.tools[group] ?? (kind === "length" ? "tape" : null));
  return { texts: [""], unit, tol: "", ...(tool && { tool, reach: usualReach(id) }) };
}

const unitPairs: {
  readonly [kind: string]: readonly [
    { value: EntryUnit; name: string; spoken: string },
    { value: EntryUnit; name: string; spoken: string },
  ];
} = {
  length: [
    { value: "mm", name: "mm", spoken: "mm" },
    { value: "in", name: "in", spoken: messages.inches },
  ],
  mass: [
    { value: "kg", name: "kg", spoken: "kg" },
    { value: "lb", name: "lb", spoken: "lb" },
  ],
};

const spokenUnits: { readonly [Unit in EntryUnit]?: string } = {
  mm: messages.millimeters,
  in: messages.inches,
  kg: messages.kilograms,
  lb: messages.pounds,
  deg: messages.degrees,
};

/** What was typed stays and is taken in the other unit; its ± is what it was. */
function inOtherUnit(entry: Entry, unit: EntryUnit): Entry {
  const bare = /^[\d.,/\s-]+$/.test(entry.tol) && entry.tol.trim() !== "" && unit !== entry.unit;
  return { ...entry, unit, tol: bare ? `${entry.tol.trim()} ${entry.unit}` : entry.tol };
}

/** One reading: its repeats, its unit, its ±, and what can be said about it. */
export function ReadingEntry({
  id,
  stored,
  change,
  preferences,
  signs,
  onEnter,
  first = false,
  children,
  brief = false,
  how,
}: Props) {
  const { kind } = catalogueEntry(id);
  const entry = entryOf(stored, id, preferences);
  const texts = entry.texts.length === 0 ? [""] : entry.texts;
  const [active, setActive] = useState(0);
  const newest = useRef<HTMLInputElement>(null);
  const [added, setAdded] = useState(0);
  useEffect(() => {
    if (added > 0) newest.current?.focus();
  }, [added]);

  const name = said(entryName(id, limitKindOf(stored.record, id)));
  const label = capital(name);
  const settled = useSettled(`${id}|${entry.texts.join("|")}|${entry.unit}|${entry.tol}`);
  const remarks = settled ? entryRemarks(stored, id, entry) : [];
  const reading = readEntry(id, entry);
  const source = sourceIn(stored.record, id);
  const geometry =
    settled && reading.ok && remarks.length === 0 ? geometryRemark(stored, id) : null;

  const pack = packRemark(
    stored,
    id,
    reading.ok && settled ? reading.value : null,
    referencePack(),
  );

  const put = (update: (current: Entry) => Entry) =>
    change((current) => setEntry(current, id, update(entryOf(current, id, preferences))));
  const setText = (index: number, text: string) =>
    put((current) => ({
      ...current,
      texts: (current.texts.length === 0 ? [""] : current.texts).map((old, at) =>
        at === index ? text : old,
      ),
    }));
  const repeated = texts.length > 1;
  const current = Math.min(active, texts.length - 1);
  const units = unitPairs[kind];
  const remarksPlace = useRef<HTMLDivElement>(null);
  useSeenAboveKeys(
    remarksPlace,
    [...remarks, ...(geometry ? [geometry] : [])].map(({ tone }) => tone).join(" "),
  );
  useScreenAwake(preferences.awake);
  useReadBack(spokenEntry(texts[current] ?? "", kind, entry.unit), preferences.speak);

  const [hasPhoto] = useState(() => photosOf(stored, id).length > 0);
  const more = reading.ok && (
    <Button
      wide
      icon="plus"
      onClick={() => {
        put((old) => ({ ...old, texts: [...old.texts, ""] }));
        setActive(texts.length);
        setAdded((count) => count + 1);
      }}
    >
      {messages.addRepeat}
    </Button>
  );
  const photo = <PhotoField id={id} stored={stored} change={change} />;

  return (
    <div class="stack-close reading-entry">
      <div class="stack-close" data-entry>
        <div class="entry-line">
          <div class="stack-close">
            {texts.map((text, index) => (
              <div key={index} class="reading-row" onFocusCapture={() => setActive(index)}>
                <NumberField
                  label={repeated ? messages.time({ label, index: index + 1 }) : label}
                  labelUnseen
                  big={!repeated}
                  first={first && index === 0}
                  value={text}
                  onInput={(typed) => setText(index, typed)}
                  fractions={entry.unit === "in"}
                  sign={kind === "angle"}
                  said={spokenEntry(text, kind, entry.unit)}
                  unit={entry.unit === "deg" ? "°" : entry.unit}
                  unitSpoken={spokenUnits[entry.unit] ?? entry.unit}
                  inputRef={index === texts.length - 1 ? newest : null}
                  {...(onEnter && { onEnter })}
                  {...(remarks[0]?.tone === "no" && { tone: "no" as const })}
                />
                {repeated && (
                  <Button
                    look="quiet"
                    icon="cross"
                    label={messages.removeReading({ index: index + 1 })}
                    onClick={() =>
                      put((old) => ({ ...old, texts: old.texts.filter((_, at) => at !== index) }))
                    }
                  />
                )}
              </div>
            ))}
          </div>
          {units && (
            <Segmented
              legend={messages.unitOfThisReading}
              legendUnseen
              value={entry.unit === units[1].value ? units[1].value : units[0].value}
              onChange={(unit) => put((old) => inOtherUnit(old, unit))}
              options={units}
            />
          )}
        </div>
        {(kind !== "angle" || repeated) && (
          <p class="small soft reading-equivalent">{equivalentText(kind, entry, reading, brief)}</p>
        )}
        {source !== null && source !== "measured" && (
          <p class="small">
            {messages.measuredItYourselfType({ source: capital(said(sourceWords[source])) })}
          </p>
        )}
      </div>
      {signs && (
        <Segmented
          legend={messages.whichWay}
          legendUnseen
          value={isMinus(texts[current] ?? "") ? "minus" : "plus"}
          onChange={(sign) =>
            put((old) => ({
              ...old,
              texts: old.texts.map((each) => withSign(each, sign === "minus")),
            }))
          }
          options={[
            { value: "plus", name: signs.plus },
            { value: "minus", name: signs.minus },
          ]}
        />
      )}
      <div class="stack-close" aria-live="polite" ref={remarksPlace}>
        {remarks.map((remark) => (
          <Notice key={remark.tone} tone={remark.tone}>
            <p>{sentenceText(remark.sentence, entry.unit === "in" ? "in" : preferences.length)}</p>
            {remark.fix && (
              <div class="row">
                <Button
                  onClick={() => {
                    const { fix } = remark;
                    if (fix) put((old) => ({ ...old, unit: fix }));
                  }}
                >
                  {remark.fix === "in" ? messages.yesInches : messages.yesMm}
                </Button>
              </div>
            )}
          </Notice>
        ))}
        {pack && (
          <Notice tone={pack.tone}>
            <p>{sentenceText(pack.sentence, entry.unit === "in" ? "in" : preferences.length)}</p>
          </Notice>
        )}
        {geometry && (
          <Notice tone={geometry.tone}>
            <p>{sentenceText(geometry.sentence, preferences.length)}</p>
          </Notice>
        )}
      </div>
      {children}
      {!brief && more}
      <ToolField
        id={id}
        entry={entry}
        values={reading.ok ? reading.value.values : []}
        onChange={(part) => put((old) => ({ ...old, ...part }))}
      />
      {brief ? (
        <>
          {how && (
            <Disclosure summary={messages.how}>
              <div class="reading-how">{how}</div>
            </Disclosure>
          )}
          <Disclosure summary={messages.repeatPhoto} open={hasPhoto}>
            {more}
            {photo}
          </Disclosure>
        </>
      ) : (
        photo
      )}
    </div>
  );
}

import { useState } from "preact/hooks";
import { isReadingId, type ReadingId } from "../../physics/readings/index.ts";
import { capital } from "../../physics/sentence.ts";
import type { StoredCheck } from "../../records/check/storedCheck.ts";
import { limitKindOf } from "../../records/entry/entryPath.ts";
import { catalogueEntry, entryName } from "../../records/entry/readingCatalogue.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import {
  blindCheck,
  personDifferences,
  readingAt,
  secondEntry,
  secondReadings,
  withSecond,
} from "../../records/filling/secondPerson.ts";
import { quantityText } from "../../saying/quantityText.ts";
import { said } from "../../saying/texts.ts";
import type { KeepState } from "../../storage/keeper.ts";
import * as messages from "../../words/compiled/screens/secondPerson.ts";
import { answerHref } from "../addresses.ts";
import { ReadingEntry } from "../check/reading/ReadingEntry.tsx";
import { NotSaved, SavedLine } from "../check/SavedLine.tsx";
import { filled } from "../filled.ts";
import type { Change } from "../guide/stepProps.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { TextField } from "../parts/Field.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import type { Preferences } from "../preferences.ts";
import { readingWords, wordedLayout } from "../readings/readingWords.ts";

export interface SecondPersonScreenProps {
  readonly stored: StoredCheck;
  readonly change: Change;
  readonly preferences: Preferences;
  readonly kept: KeepState;
  readonly tryAgain: () => void;
}

/** A second person takes the same readings without seeing the first one's. */
export function SecondPersonScreen({
  stored,
  change,
  preferences,
  kept,
  tryAgain,
}: SecondPersonScreenProps) {
  const heading = useHeadingFocus("second");
  const [name, setName] = useState(stored.record.second?.by ?? "");
  const [at, setAt] = useState<number | null>(null);
  const ids = secondReadings(stored);
  const first = stored.record.author?.name?.trim() ?? "";
  const by = name.trim();
  const same = by !== "" && by.toLowerCase() === first.toLowerCase();
  const id = at === null ? undefined : ids[at];
  const done = at !== null && at >= ids.length;
  return (
    <Screen
      top={
        <>
          <ButtonLink
            look="quiet"
            href={answerHref(stored.id)}
            icon="back"
            label={messages.toAnswer}
          />
          <span class="screen-name">{stored.name || messages.check}</span>
          <SavedLine kept={kept} />
        </>
      }
      actions={
        at === null ? (
          <Button
            look="main"
            icon="forward"
            disabled={by === "" || same || ids.length === 0}
            onClick={() => setAt(0)}
          >
            {messages.begin}
          </Button>
        ) : done ? (
          <ButtonLink look="main" href={answerHref(stored.id)}>
            {messages.toAnswer}
          </ButtonLink>
        ) : (
          <>
            <Button icon="back" onClick={() => setAt(at === 0 ? null : at - 1)}>
              {messages.back}
            </Button>
            <Button look="main" icon="forward" onClick={() => setAt(at + 1)}>
              {secondEntry(stored, id ?? "") ? messages.next : messages.leaveOut}
            </Button>
          </>
        )
      }
    >
      <NotSaved kept={kept} stored={stored} tryAgain={tryAgain} />
      {at === null && (
        <>
          <h1 ref={heading} tabIndex={-1}>
            {messages.secondPersonMeasures}
          </h1>
          <p>
            {ids.length === 0
              ? messages.nothingWasMeasuredOn
              : messages.sameReadingsWithoutSeeing({ ids: ids.length })}
          </p>
          <p>{messages.leaveVehicleAsIt}</p>
          <TextField
            label={messages.yourName}
            value={name}
            maxLength={100}
            capitals
            onInput={setName}
            {...(same && {
              tone: "no" as const,
              message: messages.firstReadingsAreBy,
            })}
          />
        </>
      )}
      {id !== undefined && (
        <BlindReading
          key={id}
          id={id}
          place={messages.placeOfCount({ place: (at ?? 0) + 1, count: ids.length })}
          stored={stored}
          change={change}
          preferences={preferences}
          by={by}
        />
      )}
      {done && <Differences stored={stored} unit={preferences.length} />}
    </Screen>
  );
}

function BlindReading({
  id,
  place,
  stored,
  change,
  preferences,
  by,
}: Pick<SecondPersonScreenProps, "stored" | "change" | "preferences"> & {
  id: ReadingId;
  place: string;
  by: string;
}) {
  const heading = useHeadingFocus(id);
  const blind = blindCheck(stored);
  const guide = readingWords(id, wordedLayout(stored.record));
  return (
    <>
      <p class="small soft">{messages.readingBySecondPerson({ place })}</p>
      <h1 ref={heading} tabIndex={-1}>
        {capital(said(entryName(id, limitKindOf(stored.record, id))))}
      </h1>
      <p>{guide.how}</p>
      <ReadingEntry
        id={id}
        stored={blind}
        change={(update) =>
          change((current) => {
            const entry = update(blindCheck(current)).entries[id];
            return entry === secondEntry(current, id)
              ? current
              : withSecond(current, id, entry, by);
          })
        }
        preferences={preferences}
      />
    </>
  );
}

/** Only once both have measured. */
function Differences({ stored, unit }: { stored: StoredCheck; unit: LengthUnit }) {
  const heading = useHeadingFocus("differences");
  const differences = personDifferences((id) => readingAt(stored, id), stored.record.second);
  const text = (id: string, value: number) => {
    const kind = isReadingId(id) ? catalogueEntry(id).kind : null;
    return kind === "angle" || kind === "length" || kind === "mass"
      ? quantityText({ kind, value }, unit)
      : String(value);
  };
  return (
    <>
      <h1 ref={heading} tabIndex={-1}>
        {messages.howTwoDiffer}
      </h1>
      {differences.length === 0 ? (
        <Notice tone="info">
          <p>{messages.nothingWasTypedBy}</p>
        </Notice>
      ) : (
        <ul class="plain-list">
          {differences.map(({ id, first, second, difference }) => {
            const tol = readingAt(stored, id)?.tol ?? 0;
            const wide = Math.abs(difference) > 2 * Math.max(tol, 0.01);
            return (
              <li key={id}>
                {filled(messages.andApart, {
                  entryName: (
                    <strong>{capital(said(entryName(id, limitKindOf(stored.record, id))))}</strong>
                  ),
                  id: text(id, first),
                  id2: text(id, second),
                  id3: text(id, Math.abs(difference)),
                })}
                {wide && <span class="tone-care"> {messages.moreThanBothAllow}</span>}
              </li>
            );
          })}
        </ul>
      )}
      <p class="small">{messages.answerStaysWithFirst}</p>
    </>
  );
}

import { useCallback, useMemo, useState } from "preact/hooks";
import { recordBounds } from "../../../records/check/recordFormat.ts";
import { changeRecord } from "../../../records/check/storedCheck.ts";
import { chosen } from "../../../records/filling/choice.ts";
import { packStops } from "../../../records/filling/packStops.ts";
import { platformOfCheck } from "../../../records/filling/platforms.ts";
import { stopSource, withPackStop, withStopSource } from "../../../records/filling/stopSources.ts";
import { isOffered, replacementOf, stopOf } from "../../../records/pack/pack.ts";
import { stopDifferences } from "../../../records/pack/packSince.ts";
import type { FoundPart } from "../../../records/pack/partCode.ts";
import { stateText, stopFacts } from "../../../records/pack/stopFacts.ts";
import { stopTitle } from "../../../records/pack/stopTitle.ts";
import { sentenceText } from "../../../saying/sentenceText.ts";
import { said } from "../../../saying/texts.ts";
import * as messages from "../../../words/compiled/screens/check/stop.ts";
import { MoreFound } from "../../choosing/MoreFound.tsx";
import { PartEntry } from "../../choosing/PartEntry.tsx";
import { SimilarStops } from "../../choosing/SimilarStops.tsx";
import { mostShown, useFound } from "../../choosing/search.ts";
import { latelyFirst, noteStop, stopsLately } from "../../choosing/stopsLately.ts";
import { filled } from "../../filled.ts";
import { isPractised } from "../../guide/practice.ts";
import type { StepProps } from "../../guide/stepProps.ts";
import { Button } from "../../parts/Button.tsx";
import { Choices, Segmented } from "../../parts/Choices.tsx";
import { Disclosure } from "../../parts/Disclosure.tsx";
import { TextField } from "../../parts/Field.tsx";
import { Notice } from "../../parts/Notice.tsx";
import { referencePack } from "../../referencePack.ts";

/** A longer list is searched. */
const mostWithoutSearch = 12;
/** Who has made three checks looks for a stop by its number or name, or takes one of the last. */
const mostShownToPractised = 3;

export function StopStep({ stored, change, preferences }: StepProps) {
  const source = stopSource(stored);
  const { stop } = stored.record;
  const [practised] = useState(isPractised);
  const take = useCallback(
    ({ stop: found, batch }: FoundPart) => {
      noteStop(found.id);
      change((current) => withPackStop(current, found, referencePack(), preferences.length, batch));
    },
    [change, preferences.length],
  );
  return (
    <>
      <p class="known-lead">{messages.stopThatIsFitted}</p>
      <PartEntry pack={referencePack()} onFound={take} />
      {source === "file" && stop && (
        <Notice tone="info">
          <p>
            {filled(messages.thisCheckCameWith, {
              stopTitle: <strong>{said(stopTitle({ name: "", ...stop }))}</strong>,
            })}
          </p>
        </Notice>
      )}
      <Choices
        legend={messages.whereAreItsFigures}
        value={source === "file" ? null : source}
        onChange={(value) => change((current) => withStopSource(current, value))}
        options={[
          {
            value: "pack",
            name: messages.inPartsLibrary,
            ...(!practised && { hint: messages.chooseItFromList }),
          },
          {
            value: "hand",
            name: messages.illTypeThem,
            ...(!practised && {
              hint: messages.freeHeightAndTest,
            }),
          },
        ]}
      />
      {source === "pack" && <PackList stored={stored} change={change} preferences={preferences} />}
      {source === "hand" && (
        <>
          <TextField
            label={messages.nameOfStop}
            hint={messages.asItIsPrinted}
            value={stop?.name ?? ""}
            maxLength={recordBounds.labelCharacters}
            capitals
            onInput={(name) =>
              change((current) =>
                changeRecord(current, (record) => ({ ...record, stop: { ...record.stop, name } })),
              )
            }
          />
          <Segmented
            legend={messages.purpose}
            value={stop?.duty ?? null}
            onChange={(duty) =>
              change((current) =>
                changeRecord(current, (record) => ({ ...record, stop: { ...record.stop, duty } })),
              )
            }
            options={[
              { value: "impact", name: messages.takesImpacts },
              { value: "carry", name: messages.supportsLoad },
            ]}
          />
          <p class="small soft">{messages.mostStopsTakeImpacts}</p>
        </>
      )}
    </>
  );
}

function PackList({
  stored,
  change,
  preferences,
}: Pick<StepProps, "stored" | "change" | "preferences">) {
  const pack = referencePack();
  const { platformId } = stored.record.vehicle ?? {};
  const [lately] = useState(stopsLately);
  const stops = useMemo(
    () => latelyFirst(packStops(stored, pack), lately),
    [pack, platformId, lately],
  );
  const [wanted, setWanted] = useState("");
  const usual = platformOfCheck(stored, pack)?.usualStop;
  const unit = preferences.length;
  const chosenId = chosen(stored, "stop.packId");
  const found = useFound(
    stops,
    (stop) => `${stop.name} ${sentenceText(stopFacts(stop), unit)}`,
    wanted,
    unit,
  );
  const most = isPractised() && wanted.trim() === "" ? mostShownToPractised : mostShown;
  const first = found.slice(0, most);
  const chosenStop = stops.find(({ id }) => id === chosenId);
  const shown = chosenStop && !first.includes(chosenStop) ? [chosenStop, ...first] : first;
  const { stop: own } = stored.record;
  const inPack = stopOf(referencePack(), chosenId);
  const replacement = inPack && replacementOf(referencePack(), inPack);
  const since = own && stopDifferences(own, referencePack());
  const choose = (id: string) => {
    const stop = stopOf(referencePack(), id);
    if (!stop) return;
    noteStop(id);
    change((current) => withPackStop(current, stop, referencePack(), unit));
  };
  return (
    <>
      {chosenId && since && (
        <Notice tone="care">
          <p>
            {messages.libraryHasWithOther({
              name: own.name ?? "",
              since: since.map(said).join(", "),
            })}
          </p>
          <div class="row">
            <Button onClick={() => choose(chosenId)}>{messages.useLibrarysFigures}</Button>
          </div>
        </Notice>
      )}
      {inPack && !isOffered(inPack) && (
        <Notice tone="info">
          <p>{messages.cantBeOrderedAny({ name: inPack.name, state: said(stateText(inPack)) })}</p>
          {replacement && (
            <div class="row">
              <Button onClick={() => choose(replacement.id)}>
                {messages.choose({ name: replacement.name })}
              </Button>
            </div>
          )}
          <Disclosure summary={messages.similarStopsThatCan}>
            <SimilarStops
              pack={referencePack()}
              wanted={inPack}
              unit={unit}
              onChoose={({ id }) => choose(id)}
            />
          </Disclosure>
        </Notice>
      )}
      {stops.length > mostWithoutSearch && (
        <TextField
          label={messages.searchStops}
          hint={messages.partNumberNameHeight}
          value={wanted}
          onInput={setWanted}
        />
      )}
      <Choices
        legend={messages.stopsOfPartsLibrary({
          found:
            found.length === stops.length
              ? stops.length
              : messages.ofWord({ found: found.length, stops: stops.length }),
        })}
        value={chosenId}
        onChange={choose}
        options={shown.map((stop) => ({
          value: stop.id,
          name:
            stop.id === usual
              ? messages.usualOnThisVehicle({ stopTitle: said(stopTitle(stop)) })
              : said(stopTitle(stop)),
          hint: sentenceText(stopFacts(stop), unit),
        }))}
      />
      <MoreFound found={found.length} shown={first.length} />
    </>
  );
}

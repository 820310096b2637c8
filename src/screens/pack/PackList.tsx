import { useRef, useState } from "preact/hooks";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop, Platform } from "../../records/pack/pack.ts";
import { platformTold } from "../../records/pack/platformTold.ts";
import { stopFacts } from "../../records/pack/stopFacts.ts";
import { sentenceText } from "../../saying/sentenceText.ts";
import { said } from "../../saying/texts.ts";
import * as messages from "../../words/compiled/screens/pack.ts";
import { checksHref, goTo, labelsHref, sendPackHref } from "../addresses.ts";
import { MoreFound } from "../choosing/MoreFound.tsx";
import { mostShown, useFound } from "../choosing/search.ts";
import { takeHandedPack } from "../handedPack.ts";
import { layoutsOnScreen } from "../layouts/layoutsOnScreen.ts";
import { Button, ButtonLink } from "../parts/Button.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import { TextField } from "../parts/Field.tsx";
import { MenuRow, type RowAction } from "../parts/MenuRow.tsx";
import { Notice } from "../parts/Notice.tsx";
import { Screen, useHeadingFocus } from "../parts/Screen.tsx";
import { type PackInUse, useShippedPack } from "../referencePack.ts";
import { shippedDigest } from "../shippedBuild.ts";
import { shippedHead } from "../shippedPack.ts";
import { MakerLine } from "./MakerLine.tsx";
import { NewerPack } from "./NewerPack.tsx";
import {
  changePack,
  copiedPlatform,
  copiedStop,
  undoPackChange,
  undoWords,
  withoutPlatform,
  withoutStop,
  withPlatform,
  withStop,
} from "./packEdits.ts";
import { type OpenedPack, readPackFile } from "./packFile.ts";
import { newItem, packItemHref, packMergeHref, packRulesHref } from "./packRoutes.ts";

/** What the pack holds, and everything that can be done with it. */
export function PackList({
  inUse,
  unit,
  onMerge,
}: {
  inUse: PackInUse;
  unit: LengthUnit;
  onMerge: (theirs: Pack, file: string) => void;
}) {
  const heading = useHeadingFocus("pack");
  const { pack, fault, revision, shipped } = inUse;
  const edited = shipped === undefined || shipped.edited || shipped.digest !== shippedDigest;
  const picker = useRef<HTMLInputElement>(null);
  const [opened, setOpened] = useState<OpenedPack | null>(() => {
    const handed = takeHandedPack();
    return handed && { ok: true, ...handed };
  });
  const [notices, setNotices] = useState<readonly string[]>([]);
  const [search, setSearch] = useState("");
  const stops = useFound(
    pack.stops,
    (stop) => `${stop.name} ${sentenceText(stopFacts(stop), unit)}`,
    search,
    unit,
  );
  const platforms = useFound(
    pack.platforms,
    (platform) =>
      `${platform.label} ${platform.axle} ${layoutsOnScreen[platform.layout.kind].words.short} ${said(platformTold(platform))}`,
    search,
  );

  const change = async (next: Pack, words: string) => {
    const result = await changePack(next, words);
    setNotices(
      result.kind === "refused"
        ? result.faults.map((each) => sentenceText(each.sentence, unit))
        : [],
    );
    if (result.kind === "changed" && result.kept.kind === "changedElsewhere") goTo(packMergeHref);
  };
  const useShipped = async () => {
    if (shippedDigest === null) {
      return change(shippedHead, messages.leftForLibraryThat({ name: pack.name }));
    }
    const kept = await useShippedPack();
    if (kept === null) setNotices([messages.libraryThatShipsCant]);
  };
  const open = async (list: FileList | null) => {
    const file = list?.[0];
    if (picker.current) picker.current.value = "";
    if (file) setOpened(await readPackFile(file));
  };
  const usualOf = (id: string) => pack.platforms.filter(({ usualStop }) => usualStop === id).length;
  const deleteStop = (stop: PackStop) => {
    const count = usualOf(stop.id);
    const also =
      count === 0 ? "" : messages.usualStopOfVehicle({ count, count2: count === 1 ? "" : "s" });
    return change(withoutStop(pack, stop.id), messages.deleted({ name: stop.name, also }));
  };
  const undo = undoWords();

  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label={messages.allChecks} />
          <span class="screen-name">{messages.partsLibrary}</span>
        </>
      }
      actions={
        <>
          <Button look="main" icon="file" onClick={() => picker.current?.click()}>
            {messages.openLibrary}
          </Button>
          <ButtonLink href={sendPackHref} icon="forward">
            {messages.handOver}
          </ButtonLink>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {pack.name || messages.partsLibrary}
      </h1>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        class="unseen"
        tabIndex={-1}
        aria-label={messages.libraryToOpen}
        onChange={(event) => open(event.currentTarget.files)}
      />
      {pack.maker && <MakerLine maker={pack.maker} />}
      <NewerPack unit={unit} onMerge={(theirs) => onMerge(theirs, theirs.name)} />
      {pack.notes && <p class="soft">{pack.notes}</p>}
      <p class="small soft">
        {messages.stopsVehiclesAsIt({
          stops: pack.stops.length,
          platforms: pack.platforms.length,
          isRevision: Boolean(revision === 0 || (shippedDigest !== null && !edited)),
          hasEdition: Boolean(pack.edition),
          edition: pack.edition,
        })}
      </p>
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, unit)}</p>
        </Notice>
      )}
      {notices.length > 0 && (
        <Notice tone="no" live>
          {notices.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Notice>
      )}
      {undo !== null && (
        <Notice tone="info" live>
          <p>{undo}.</p>
          <div class="row">
            <Button icon="undo" onClick={() => undoPackChange().then(() => setNotices([]))}>
              {messages.undo}
            </Button>
          </div>
        </Notice>
      )}
      <div class="row">
        <ButtonLink href={packRulesHref} icon="pencil">
          {messages.nameAndRequirements}
        </ButtonLink>
        <ButtonLink href={labelsHref}>{messages.labelsForParts}</ButtonLink>
        {(shippedDigest === null ? revision !== 0 : edited) && (
          <Button icon="undo" onClick={() => useShipped()}>
            {messages.libraryThatShips}
          </Button>
        )}
      </div>
      <TextField
        label={messages.search}
        value={search}
        onInput={setSearch}
        placeholder={messages.partNumberNameClass}
      />
      <section class="stack-close" aria-labelledby="stops-heading">
        <div class="pack-heading">
          <h2 id="stops-heading">{messages.stops({ stops: stops.length })}</h2>
          <ButtonLink icon="plus" href={packItemHref("stop", newItem)}>
            {messages.add}
            <span class="unseen"> {messages.stopWord2}</span>
          </ButtonLink>
        </div>
        <ul class="check-list">
          {stops.slice(0, mostShown).map((stop) => (
            <MenuRow
              key={stop.id}
              name={stop.name}
              facts={`${sentenceText(stopFacts(stop), unit)}${stop.tests?.length ? messages.test({ tests: stop.tests.length, tests2: stop.tests.length === 1 ? "" : "s" }) : ""}`}
              href={packItemHref("stop", stop.id)}
              actions={itemActions(
                () => {
                  const copy = copiedStop(pack, stop);
                  return change(withStop(pack, copy), messages.added({ name: copy.name }));
                },
                () => deleteStop(stop),
              )}
            />
          ))}
        </ul>
        <MoreFound found={stops.length} shown={mostShown} />
      </section>
      <section class="stack-close" aria-labelledby="platforms-heading">
        <div class="pack-heading">
          <h2 id="platforms-heading">{messages.vehicles({ platforms: platforms.length })}</h2>
          <ButtonLink icon="plus" href={packItemHref("platform", newItem)}>
            {messages.add}
            <span class="unseen"> {messages.vehicle2}</span>
          </ButtonLink>
        </div>
        <ul class="check-list">
          {platforms.slice(0, mostShown).map((platform) => (
            <MenuRow
              key={platform.id}
              name={messages.axle({ label: platform.label, axle: platform.axle })}
              facts={platformFacts(platform, pack)}
              href={packItemHref("platform", platform.id)}
              actions={itemActions(
                () => {
                  const copy = copiedPlatform(pack, platform);
                  return change(withPlatform(pack, copy), messages.added2({ label: copy.label }));
                },
                () =>
                  change(
                    withoutPlatform(pack, platform.id),
                    messages.deleted2({ label: platform.label }),
                  ),
              )}
            />
          ))}
        </ul>
        <MoreFound found={platforms.length} shown={mostShown} />
      </section>
      {opened && (
        <OpenedDialog
          opened={opened}
          unit={unit}
          onLeave={() => setOpened(null)}
          onUse={(theirs) => {
            setOpened(null);
            return change(
              theirs,
              messages.openedInPlaceOf({ name: theirs.name, name2: pack.name }),
            );
          }}
          onMerge={(theirs) => {
            setOpened(null);
            onMerge(theirs, opened.file);
          }}
        />
      )}
    </Screen>
  );
}

function platformFacts(platform: Platform, pack: Pack): string {
  const { layout, usualStop, limits } = platform;
  const stop = pack.stops.find(({ id }) => id === usualStop);
  const told = said(platformTold(platform));
  return [
    ...(told === "" ? [] : [told]),
    layoutsOnScreen[layout.kind].words.short,
    stop ? messages.usualStop({ name: stop.name }) : messages.noUsualStop,
    messages.clearance({ limits: limits.length, limits2: limits.length === 1 ? "" : "s" }),
  ].join(" · ");
}

function itemActions(onCopy: () => void, onDelete: () => void): readonly RowAction[] {
  return [
    { words: messages.copy, icon: "copy", act: onCopy },
    { words: messages.deleteWord, icon: "bin", danger: true, act: onDelete },
  ];
}

const mostFaults = 12;

function OpenedDialog({
  opened,
  unit,
  onLeave,
  onUse,
  onMerge,
}: {
  opened: OpenedPack;
  unit: LengthUnit;
  onLeave: () => void;
  onUse: (pack: Pack) => void;
  onMerge: (pack: Pack) => void;
}) {
  if (!opened.ok) {
    return (
      <Dialog
        heading={messages.thisFileCantBe}
        onLeave={onLeave}
        actions={
          <Button look="main" onClick={onLeave}>
            {messages.closeWord}
          </Button>
        }
      >
        <p class="small soft">{opened.file}</p>
        <ul class="plain-list">
          {opened.faults.slice(0, mostFaults).map((fault, index) => (
            <li key={index}>{sentenceText(fault.sentence, unit)}</li>
          ))}
        </ul>
        {opened.faults.length > mostFaults && (
          <p>{messages.andMore({ faults: opened.faults.length - mostFaults })}</p>
        )}
      </Dialog>
    );
  }
  const { pack } = opened;
  return (
    <Dialog
      heading={pack.name || opened.file}
      onLeave={onLeave}
      actions={
        <>
          <Button onClick={onLeave}>{messages.cancel}</Button>
          <Button onClick={() => onMerge(pack)}>{messages.mergeTwo}</Button>
          <Button look="main" onClick={() => onUse(pack)}>
            {messages.useItInstead}
          </Button>
        </>
      }
    >
      <p>
        {messages.stopsVehicles({ stops: pack.stops.length, platforms: pack.platforms.length })}
      </p>
      <p class="small">{messages.useItInsteadPuts}</p>
    </Dialog>
  );
}

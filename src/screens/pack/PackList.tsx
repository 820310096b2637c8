import { useRef, useState } from "preact/hooks";
import { sentenceText } from "../../records/entry/quantityText.ts";
import type { LengthUnit } from "../../records/entry/units.ts";
import type { Pack, PackStop, Platform } from "../../records/pack/pack.ts";
import { platformTold } from "../../records/pack/platformTold.ts";
import { stopFacts } from "../../records/pack/stopFacts.ts";
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
  const [said, setSaid] = useState<readonly string[]>([]);
  const [search, setSearch] = useState("");
  const stops = useFound(
    pack.stops,
    (stop) => `${stop.name} ${stopFacts(stop, unit)}`,
    search,
    unit,
  );
  const platforms = useFound(
    pack.platforms,
    (platform) =>
      `${platform.label} ${platform.axle} ${layoutsOnScreen[platform.layout.kind].words.short} ${platformTold(platform)}`,
    search,
  );

  const change = async (next: Pack, words: string) => {
    const result = await changePack(next, words);
    setSaid(
      result.kind === "refused"
        ? result.faults.map((each) => sentenceText(each.sentence, unit))
        : [],
    );
    if (result.kind === "changed" && result.kept.kind === "changedElsewhere") goTo(packMergeHref);
  };
  const useShipped = async () => {
    if (shippedDigest === null) {
      return change(shippedHead, `Left: ${pack.name}, for the library that ships`);
    }
    const kept = await useShippedPack();
    if (kept === null)
      setSaid(["The library that ships can't be read. Find a signal, then try again."]);
  };
  const open = async (list: FileList | null) => {
    const file = list?.[0];
    if (picker.current) picker.current.value = "";
    if (file) setOpened(await readPackFile(file));
  };
  const usualOf = (id: string) => pack.platforms.filter(({ usualStop }) => usualStop === id).length;
  const deleteStop = (stop: PackStop) => {
    const count = usualOf(stop.id);
    const also = count === 0 ? "" : `, the usual stop of ${count} vehicle${count === 1 ? "" : "s"}`;
    return change(withoutStop(pack, stop.id), `Deleted: ${stop.name}${also}`);
  };
  const undo = undoWords();

  return (
    <Screen
      top={
        <>
          <ButtonLink look="quiet" href={checksHref} icon="back" label="All checks" />
          <span class="screen-name">Parts library</span>
        </>
      }
      actions={
        <>
          <Button look="main" icon="file" onClick={() => picker.current?.click()}>
            Open a library
          </Button>
          <ButtonLink href={sendPackHref} icon="forward">
            Hand over
          </ButtonLink>
        </>
      }
    >
      <h1 ref={heading} tabIndex={-1}>
        {pack.name || "Parts library"}
      </h1>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        class="unseen"
        tabIndex={-1}
        aria-label="Library to open"
        onChange={(event) => open(event.currentTarget.files)}
      />
      {pack.maker && <MakerLine maker={pack.maker} />}
      <NewerPack unit={unit} onMerge={(theirs) => onMerge(theirs, theirs.name)} />
      {pack.notes && <p class="soft">{pack.notes}</p>}
      <p class="small soft">
        {pack.stops.length} stops, {pack.platforms.length} vehicles.{" "}
        {revision === 0 || (shippedDigest !== null && !edited)
          ? "As it came with Stopfit."
          : "Saved on this phone."}{" "}
        {pack.edition && `Edition ${pack.edition}. `}Checks keep a copy of what they used: a change
        here changes no old answer.
      </p>
      {fault && (
        <Notice tone="no" live>
          <p>{sentenceText(fault.sentence, unit)}</p>
        </Notice>
      )}
      {said.length > 0 && (
        <Notice tone="no" live>
          {said.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Notice>
      )}
      {undo !== null && (
        <Notice tone="info" live>
          <p>{undo}.</p>
          <div class="row">
            <Button icon="undo" onClick={() => undoPackChange().then(() => setSaid([]))}>
              Undo
            </Button>
          </div>
        </Notice>
      )}
      <div class="row">
        <ButtonLink href={packRulesHref} icon="pencil">
          Name and requirements
        </ButtonLink>
        <ButtonLink href={labelsHref}>Labels for parts</ButtonLink>
        {(shippedDigest === null ? revision !== 0 : edited) && (
          <Button icon="undo" onClick={() => useShipped()}>
            The library that ships
          </Button>
        )}
      </div>
      <TextField
        label="Search"
        value={search}
        onInput={setSearch}
        placeholder="Part number, name, class"
      />
      <section class="stack-close" aria-labelledby="stops-heading">
        <div class="pack-heading">
          <h2 id="stops-heading">Stops ({stops.length})</h2>
          <ButtonLink icon="plus" href={packItemHref("stop", newItem)}>
            Add<span class="unseen"> a stop</span>
          </ButtonLink>
        </div>
        <ul class="check-list">
          {stops.slice(0, mostShown).map((stop) => (
            <MenuRow
              key={stop.id}
              name={stop.name}
              facts={`${stopFacts(stop, unit)}${stop.tests?.length ? ` · ${stop.tests.length} test${stop.tests.length === 1 ? "" : "s"}` : ""}`}
              href={packItemHref("stop", stop.id)}
              actions={itemActions(
                () => {
                  const copy = copiedStop(pack, stop);
                  return change(withStop(pack, copy), `Added: ${copy.name}`);
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
          <h2 id="platforms-heading">Vehicles ({platforms.length})</h2>
          <ButtonLink icon="plus" href={packItemHref("platform", newItem)}>
            Add<span class="unseen"> a vehicle</span>
          </ButtonLink>
        </div>
        <ul class="check-list">
          {platforms.slice(0, mostShown).map((platform) => (
            <MenuRow
              key={platform.id}
              name={`${platform.label}, ${platform.axle} axle`}
              facts={platformFacts(platform, pack)}
              href={packItemHref("platform", platform.id)}
              actions={itemActions(
                () => {
                  const copy = copiedPlatform(pack, platform);
                  return change(withPlatform(pack, copy), `Added: ${copy.label}`);
                },
                () => change(withoutPlatform(pack, platform.id), `Deleted: ${platform.label}`),
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
            return change(theirs, `Opened: ${theirs.name}, in place of ${pack.name}`);
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
  const told = platformTold(platform);
  return [
    ...(told === "" ? [] : [told]),
    layoutsOnScreen[layout.kind].words.short,
    stop ? `usual stop: ${stop.name}` : "no usual stop",
    `${limits.length} clearance${limits.length === 1 ? "" : "s"}`,
  ].join(" · ");
}

function itemActions(onCopy: () => void, onDelete: () => void): readonly RowAction[] {
  return [
    { words: "Copy", icon: "copy", act: onCopy },
    { words: "Delete", icon: "bin", danger: true, act: onDelete },
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
        heading="This file can't be used"
        onLeave={onLeave}
        actions={
          <Button look="main" onClick={onLeave}>
            Close
          </Button>
        }
      >
        <p class="small soft">{opened.file}</p>
        <ul class="plain-list">
          {opened.faults.slice(0, mostFaults).map((fault, index) => (
            <li key={index}>{sentenceText(fault.sentence, unit)}</li>
          ))}
        </ul>
        {opened.faults.length > mostFaults && <p>And {opened.faults.length - mostFaults} more.</p>}
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
          <Button onClick={onLeave}>Cancel</Button>
          <Button onClick={() => onMerge(pack)}>Merge the two</Button>
          <Button look="main" onClick={() => onUse(pack)}>
            Use it instead
          </Button>
        </>
      }
    >
      <p>
        {pack.stops.length} stops, {pack.platforms.length} vehicles.
      </p>
      <p class="small">
        “Use it instead” puts it in place of the library that is here; “Merge the two” shows what
        differs first. Either can be undone.
      </p>
    </Dialog>
  );
}
